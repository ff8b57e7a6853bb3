package dev.lapwright.torture;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.Tag;
import net.jqwik.api.lifecycle.AddLifecycleHook;

/**
 * Law that random cases are held to. In each build it is tried on few cases, always the same; with {@code -Ptorture} on as many as its
 * share of {@code -Dtorture.minutes} allows, from a seed that is printed and that {@code -Dtorture.seed} repeats.
 */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
@Property(edgeCases = EdgeCasesMode.NONE, shrinking = ShrinkingMode.OFF)
@Tag("torture")
@AddLifecycleHook(TortureHook.class)
public @interface Torture {
    /** Cases of each build. */
    int cases();

    /** Share of the time of {@code -Ptorture}, percent. */
    double percent();
}
