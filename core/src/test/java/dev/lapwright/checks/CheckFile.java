package dev.lapwright.checks;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** Runs a parameterised test once for each row of a file in {@code src/test/resources/checks}. */
@Documented
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
@ArgumentsSource(CheckRows.class)
public @interface CheckFile {
    /** Name of the file, as in {@code curve-radii.csv}. */
    String value();

    /** Only the rows whose column {@code quantity} has one of these values; all if empty. */
    String[] quantities() default {};
}
