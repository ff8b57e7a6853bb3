package dev.lapwright.brief;

import dev.lapwright.fault.LapwrightException;
import dev.lapwright.study.StudyStoppedException;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * One part of a brief, or why it is missing.
 *
 * @param <T> what the part holds
 * @param value what was found; empty where it is missing
 * @param problem why it is missing; empty where it is there
 * @param remedy what to do about it; empty where it is there, or where nothing can be done
 */
public record BriefPart<T>(Optional<T> value, String problem, String remedy) {
    /** A part that is there. */
    public static <T> BriefPart<T> of(T value) {
        return new BriefPart<>(Optional.of(value), "", "");
    }

    /** A part that is missing. */
    public static <T> BriefPart<T> missing(String problem, String remedy) {
        return new BriefPart<>(Optional.empty(), problem, remedy);
    }

    /** What a study finds, or the error with which it stops. */
    static <T> BriefPart<T> ask(Supplier<T> study) {
        try {
            return of(study.get());
        } catch (StudyStoppedException stopped) {
            throw stopped;
        } catch (LapwrightException fault) {
            String place = fault.place().isEmpty() ? "" : fault.place() + ": ";
            return missing(place + fault.problem(), fault.remedy());
        }
    }

    /** Whether it is there. */
    public boolean isThere() {
        return value.isPresent();
    }

    /** The same problem for another part that cannot do without this one. */
    <U> BriefPart<U> missingToo() {
        return missing(problem, remedy);
    }
}
