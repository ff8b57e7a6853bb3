package dev.lapwright.brief;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Caution;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.lap.Limit;
import dev.lapwright.study.StudyStoppedException;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.compare.Comparison;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationResult;
import dev.lapwright.study.pressures.PressureResult;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.study.sensitivity.SensitivityResult;
import dev.lapwright.study.stint.StintResult;
import dev.lapwright.track.Corner;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Supplier;

/**
 * Answers of a brief, each of which may be missing. All parts but suggestion and tests are about the car as it stands, after driving as it
 * is kept and as far as it is known then ({@link Debrief#car}); each part stands alone.
 *
 * @param choices what was asked
 * @param lap of the car as it stands
 * @param places corners and what lies between them, in driving order, one that spans the start line last
 * @param sensitivity what is worth changing
 * @param verdicts the adjustments by what can be said of each, those of the plan apart
 * @param suggestion the setup suggested, and why
 * @param plan the way there, step by step
 * @param wings what each adjustment that moves wings or areas trades, at least one
 * @param exchange what drag, downforce and grip are worth to each other
 * @param gearing what the lap makes of the gears, and of others
 * @param balance by phase of each corner
 * @param pressures to start from
 * @param stint fuel for the race
 * @param tests what to drive to see whether it is so, in order
 * @param debrief what was driven, and the car that comes of it
 * @param heard what the driver's words leave of the doubt; empty where there are none, or no cars are drawn
 */
public record BriefResult(
        BriefChoices choices,
        Lap lap,
        List<PlaceShare> places,
        Part<Priorities> sensitivity,
        Part<AdjustmentVerdicts> verdicts,
        Part<SuggestedSetup> suggestion,
        Part<ChangePlan> plan,
        Part<List<WingTrade>> wings,
        Part<AeroExchange> exchange,
        Part<GearingResult> gearing,
        Part<BalanceResult> balance,
        Part<StartPressures> pressures,
        Part<StintResult> stint,
        Part<TestPlan> tests,
        Debrief debrief,
        Optional<Heard> heard) {
    public BriefResult {
        places = List.copyOf(places);
    }

    /** The car as it stands. */
    public Car car() {
        return lap.vehicle().car();
    }

    /** Whether the scatter of lap times with which tests are planned is that of the log. */
    public boolean isScatterLogged() {
        return choices.testing().scatter().isEmpty()
                && debrief.proof()
                        .value()
                        .map(Proof::scatter)
                        .orElse(OptionalDouble.empty())
                        .isPresent();
    }

    /** Where. */
    public Track track() {
        return lap.track();
    }

    /** The day. */
    public Conditions conditions() {
        return lap.vehicle().conditions();
    }

    /**
     * Answer of one study, or why it is missing.
     *
     * @param <T> what the part holds
     * @param value what was found; empty where it is missing
     * @param problem why it is missing; empty where it is there
     * @param remedy what to do about it; empty where it is there, or where nothing can be done
     */
    public record Part<T>(Optional<T> value, String problem, String remedy) {
        /** A part that is there. */
        public static <T> Part<T> of(T value) {
            return new Part<>(Optional.of(value), "", "");
        }

        /** A part that is missing. */
        public static <T> Part<T> missing(String problem, String remedy) {
            return new Part<>(Optional.empty(), problem, remedy);
        }

        /** What a study finds, or the error with which it stops. */
        static <T> Part<T> ask(Supplier<T> study) {
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
        <U> Part<U> missingToo() {
            return missing(problem, remedy);
        }
    }

    /**
     * Rates of exchange between drag, downforce and grip at a circuit, for the car as it stands; each changed by a percent
     * of the whole, wings included. Differences are minus where the lap is faster.
     *
     * @param lessDrag difference for one percent less drag area, s
     * @param moreDownforce difference for one percent more downforce area on each axle, s
     * @param moreGrip difference for one percent more grip of all tyres, s
     * @param dragArea CdA of which a percent was taken, m², at the mean speed of the lap
     * @param downforceArea ClA on both axles of which a percent was added, m²
     */
    public record AeroExchange(
            double lessDrag, double moreDownforce, double moreGrip, double dragArea, double downforceArea) {
        /**
         * Drag area (m²) that one m² more of downforce area may cost before the lap becomes slower: a wing that pays more is too
         * steep here. NaN where there is no downforce or less drag makes nothing faster.
         */
        public double dragForDownforce() {
            double perDownforce = moreDownforce / downforceArea;
            double perDrag = lessDrag / dragArea;
            return perDrag < 0 && downforceArea > 0 ? perDownforce / perDrag : Double.NaN;
        }
    }

    /**
     * Effect of a change on the lap: how much, where, and by what limit. Differences are minus where the change is faster.
     *
     * @param comparison the lap without the change first, the lap with it second
     */
    public record ChangeEffect(Comparison comparison) {
        /** Of the whole lap, s. */
        public double difference() {
            return comparison.difference();
        }

        /** In each timing sector, s; adds up to the whole. */
        public List<Double> bySector() {
            return Arrays.stream(comparison.bySector()).boxed().toList();
        }

        /** Number of the timing sector, from 1, that changes most in the direction of the whole; of equals the first. */
        public int mainSector() {
            double sign = Math.signum(difference());
            List<Double> differences = bySector();
            int main = 0;
            for (int i = 1; i < differences.size(); i++) {
                if (sign * differences.get(i) > sign * differences.get(main)) {
                    main = i;
                }
            }
            return main + 1;
        }

        /** Corners and straights, the one that becomes faster by most first, the one that becomes slower by most last. */
        public List<Comparison.Part> places() {
            return comparison.parts().stream()
                    .sorted(Comparator.comparingDouble(Comparison.Part::difference))
                    .toList();
        }

        /** In all corners together, s. */
        public double inCorners() {
            return comparison.inCorners();
        }

        /** On all straights together, s. */
        public double onStraights() {
            return comparison.onStraights();
        }

        /** By what limits the car, s; adds up to the whole. A copy. */
        public Map<Limit, Double> byCause() {
            return comparison.byCause();
        }
    }

    /**
     * Time and speeds in a corner, or on what lies between two.
     *
     * @param label the corner, or the corners that a straight lies between
     * @param corner the corner; empty on a straight
     * @param from distance where it begins, m; exceeds {@code to} where it spans the start line
     * @param to distance where it ends, m
     * @param drive its time and speeds; over all places the times add up to the lap time
     * @param share of the lap time, 0 to 1
     * @param limits share of the time there limited by each thing; adds up to 1
     */
    public record PlaceShare(
            String label,
            Optional<Corner> corner,
            double from,
            double to,
            Comparison.Part.Drive drive,
            double share,
            Map<Limit, Double> limits) {
        public PlaceShare {
            Map<Limit, Double> copy = new EnumMap<>(Limit.class);
            copy.putAll(limits);
            limits = copy;
        }

        /** Those of a lap: the parts into which a comparison cuts two laps. */
        static List<PlaceShare> of(Lap lap) {
            List<PlaceShare> places = new ArrayList<>();
            for (Comparison.Part part : Comparison.of(lap, lap).parts()) {
                places.add(new PlaceShare(
                        part.label(),
                        part.corner(),
                        part.from(),
                        part.to(),
                        part.first(),
                        part.first().time() / lap.time(),
                        limits(lap, part)));
            }
            return places;
        }

        /** Each end of a cell between two stations answers for half of its time. */
        private static Map<Limit, Double> limits(Lap lap, Comparison.Part part) {
            double[] s = lap.column(Channel.DISTANCE);
            double[] t = lap.column(Channel.TIME);
            Map<Limit, Double> shares = new EnumMap<>(Limit.class);
            for (int i = 0; i + 1 < s.length; i++) {
                double middle = 0.5 * (s[i] + s[i + 1]);
                if (within(part, middle)) {
                    double half = 0.5 * (t[i + 1] - t[i]) / part.first().time();
                    shares.merge(lap.limit(i), half, Double::sum);
                    shares.merge(lap.limit(i + 1), half, Double::sum);
                }
            }
            return shares;
        }

        private static boolean within(Comparison.Part part, double distance) {
            return part.from() < part.to()
                    ? distance >= part.from() && distance <= part.to()
                    : distance >= part.from() || distance <= part.to();
        }

        /** By limit; a copy. */
        @Override
        public Map<Limit, Double> limits() {
            return new EnumMap<>(limits);
        }

        /** Whether it is a corner. */
        public boolean isCorner() {
            return corner.isPresent();
        }

        /** What limits the car most of the time there; of equals the first in the order of {@link Limit}. */
        public Limit mainLimit() {
            return limits.entrySet().stream()
                    .reduce((most, other) -> other.getValue() > most.getValue() ? other : most)
                    .orElseThrow()
                    .getKey();
        }
    }

    /**
     * Adjustments by whether they are worth changing. Each adjustment that can be turned is in one of the three lists, in
     * the order of what it is worth over its range.
     *
     * @param study what was found
     * @param worthChanging another setting is faster by {@link LapTimeDifference#COUNTS} or more, and a lap time may decide about it
     * @param notWorthChanging no setting of those tried is faster by as much
     * @param leftAlone it would be faster by as much, but a lap time says too little about it
     * @param reasons why those are left alone, one for each of them
     */
    public record Priorities(
            SensitivityResult study,
            List<SensitivityResult.Worth> worthChanging,
            List<SensitivityResult.Worth> notWorthChanging,
            List<SensitivityResult.Worth> leftAlone,
            List<OptimisationResult.LeftAlone> reasons) {
        public Priorities {
            worthChanging = List.copyOf(worthChanging);
            notWorthChanging = List.copyOf(notWorthChanging);
            leftAlone = List.copyOf(leftAlone);
            reasons = List.copyOf(reasons);
        }

        static Priorities of(SensitivityResult study) {
            List<OptimisationResult.LeftAlone> kept = Optimisation.leftAlone(study.car());
            List<SensitivityResult.Worth> changing = new ArrayList<>();
            List<SensitivityResult.Worth> staying = new ArrayList<>();
            List<SensitivityResult.Worth> alone = new ArrayList<>();
            List<OptimisationResult.LeftAlone> reasons = new ArrayList<>();
            for (SensitivityResult.Worth worth : study.worths()) {
                Optional<OptimisationResult.LeftAlone> reason = kept.stream()
                        .filter(one -> one.name().equals(worth.adjustment().name()))
                        .findFirst();
                if (!LapTimeDifference.counts(worth.best().difference())) {
                    staying.add(worth);
                } else if (reason.isPresent()) {
                    alone.add(worth);
                    reasons.add(reason.get());
                } else {
                    changing.add(worth);
                }
            }
            return new Priorities(study, changing, staying, alone, reasons);
        }

        /** Whether a lap time says too little about an adjustment for a search to turn it unasked. */
        boolean isDelicate(Adjustment adjustment) {
            return Optimisation.leftAlone(study.car()).stream()
                    .anyMatch(kept -> kept.name().equals(adjustment.name()));
        }
    }

    /**
     * Cold pressures to start from. With logged pairs they are those that the pairs lead to. Without, the gas is supposed
     * to run as hot as the tyre does in the car's document, from cold tyres as warm as the air: a place to begin, to be
     * corrected after the first run by its pairs.
     *
     * @param study the pressures; without logged pairs its pairs are the supposed ones, and so are its rises
     * @param logged whether the pairs were logged
     * @param gasTempC temperature at which the gas is supposed to run, degC; NaN with logged pairs
     * @param hotFrontKpa hot pressure at which the front tyres of the car stand, kPa gauge
     * @param hotRearKpa the same at the rear
     * @param worth what setting them as wanted is worth; empty without logged pairs
     */
    public record StartPressures(
            PressureResult study,
            boolean logged,
            double gasTempC,
            double hotFrontKpa,
            double hotRearKpa,
            Optional<PressureWorth> worth) {}

    /**
     * What it is worth to set hot pressures as wanted. It takes no laps of the test, as a gauge tells whether they are; so if it is a gain it comes
     * before all runs: per lap of testing nothing is worth more, and what is found on wrong pressures is found of another car (common practice, no
     * source).
     *
     * @param difference of the lap time to the pressures logged last, s, minus where faster
     * @param doubt how that stands on drawn cars; empty where none were drawn
     * @param isGain whether it is one, by the rule for all changes: {@link RobustnessResult#isFirmGain}; without drawn cars, if it counts
     */
    public record PressureWorth(double difference, Optional<RobustnessResult.Standing> doubt, boolean isGain) {}

    /**
     * Change of one adjustment's setting.
     *
     * @param adjustment which
     * @param from setting before
     * @param to setting after
     */
    public record SettingChange(Adjustment adjustment, double from, double to) {
        /** Cautions that this adjustment calls for. */
        public Set<Caution> cautions() {
            return adjustment.cautions();
        }
    }
}
