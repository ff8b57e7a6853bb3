package dev.lapwright.brief;

import dev.lapwright.study.robust.RobustnessResult;
import java.util.Optional;

/**
 * Cars that a car may be, as far as a driver's words of it as it stands leave them.
 *
 * @param drawn cars drawn to find those that go with the words
 * @param left those that do: all that is said of the doubt rests on them
 * @param before how the whole plan stands on cars drawn without the words; empty where there is no plan
 */
public record Heard(int drawn, int left, Optional<RobustnessResult.Standing> before) {}
