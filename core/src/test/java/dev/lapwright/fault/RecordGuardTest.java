package dev.lapwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.aero.Platform;
import dev.lapwright.aero.Wing;
import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.ChangePlan;
import dev.lapwright.brief.Heard;
import dev.lapwright.brief.Proof;
import dev.lapwright.brief.TestPlan;
import dev.lapwright.brief.WingTrade;
import dev.lapwright.car.Adjustment;
import dev.lapwright.doubt.Unknown;
import dev.lapwright.doubt.UnknownShare;
import dev.lapwright.draft.CarDraft;
import dev.lapwright.evidence.DayPlan;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.evidence.NormalMixture;
import dev.lapwright.fit.FitResult;
import dev.lapwright.lap.AxleMargins;
import dev.lapwright.lap.CarFigures;
import dev.lapwright.lap.CornerFigures;
import dev.lapwright.lap.Handling;
import dev.lapwright.lap.LapDerivatives;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.line.Line;
import dev.lapwright.numerics.ArcLengthCurve;
import dev.lapwright.ride.QuarterCar;
import dev.lapwright.ride.RidePass;
import dev.lapwright.slip.SlipState;
import dev.lapwright.study.LapTimeBand;
import dev.lapwright.study.advice.AdviceResult;
import dev.lapwright.study.advice.OverKerb;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.balance.RemedyResult;
import dev.lapwright.study.balance.SlipBalanceResult;
import dev.lapwright.study.compare.Comparison;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.gearing.RatioBoxResult;
import dev.lapwright.study.landscape.Landscape;
import dev.lapwright.study.lines.OwnLinesResult;
import dev.lapwright.study.opinion.EitherModel;
import dev.lapwright.study.opinion.SecondOpinionResult;
import dev.lapwright.study.optimise.OptimisationResult;
import dev.lapwright.study.pressures.PressureResult;
import dev.lapwright.study.ride.DamperMapResult;
import dev.lapwright.study.ride.RideResult;
import dev.lapwright.study.robust.FirmChanges;
import dev.lapwright.study.robust.JudgedAdjustments;
import dev.lapwright.study.robust.ModelChoices;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.study.robust.SettledVerdicts;
import dev.lapwright.study.sensitivity.QuantityWorths;
import dev.lapwright.study.sensitivity.SensitivityResult;
import dev.lapwright.study.stint.StintDoubtResult;
import dev.lapwright.study.stint.StintResult;
import dev.lapwright.study.stint.StopPlansResult;
import dev.lapwright.study.weight.WeightResult;
import dev.lapwright.track.Corner;
import dev.lapwright.track.DoubtfulPlace;
import dev.lapwright.track.RoadEdit;
import dev.lapwright.track.Stations;
import dev.lapwright.track.survey.CurvatureBand;
import dev.lapwright.track.survey.EventLaps;
import dev.lapwright.track.survey.ImportReport;
import dev.lapwright.track.survey.LapPick;
import dev.lapwright.track.survey.Survey;
import dev.lapwright.track.survey.SurveyPoint;
import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Modifier;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** No public record that a user fills lets a number through that is none, and each says which field it was. */
class RecordGuardTest {
    private static final double NO_LIMIT = Double.POSITIVE_INFINITY;

    /** What the library hands out, not what it takes in. */
    private static final Set<Class<?>> RESULTS = Set.of(
            Corner.class,
            ImportReport.LogReport.class,
            EventLaps.OfSurvey.class,
            LapPick.RecordedLap.class,
            CornerFigures.class,
            LapDerivatives.Sides.class,
            LapFigures.class,
            Line.Figures.class,
            CarFigures.class,
            CarFigures.Engine.class,
            CarFigures.Aero.class,
            Landscape.class,
            Landscape.Point.class,
            Comparison.Part.class,
            Comparison.Part.Drive.class,
            GearingResult.Candidate.class,
            GearingResult.Gear.class,
            GearingResult.GearedLap.class,
            GearingResult.Scenario.class,
            GearingResult.Shift.class,
            GearingResult.TopSpeed.class,
            GearingResult.Limiter.class,
            SensitivityResult.Trial.class,
            OptimisationResult.Limited.class,
            OwnLinesResult.OwnLap.class,
            SecondOpinionResult.class,
            SecondOpinionResult.Opinion.class,
            SecondOpinionResult.Place.class,
            SlipBalanceResult.class,
            SlipBalanceResult.Corner.class,
            SlipBalanceResult.Phase.class,
            SlipBalanceResult.Steering.class,
            EitherModel.class,
            WeightResult.class,
            WeightResult.Worth.class,
            WeightResult.Place.class,
            GearingResult.Traction.class,
            Platform.State.class,
            ImportReport.class,
            ImportReport.ElevationReport.class,
            CurvatureBand.CornerBand.class,
            LapTimeBand.class,
            ImportReport.SmoothingReport.class,
            ImportReport.MotionReport.class,
            ImportReport.ShapeReport.class,
            ArcLengthCurve.Place.class,
            Stations.Place.class,
            SensitivityResult.Worth.class,
            QuantityWorths.Worth.class,
            QuantityWorths.Result.class,
            SensitivityResult.Interaction.class,
            SensitivityResult.class,
            AxleMargins.class,
            SlipState.class,
            SlipState.SlipWheel.class,
            Handling.AeroBalance.class,
            BalanceResult.PhaseBalance.class,
            PressureResult.Cost.class,
            PressureResult.class,
            StintResult.FuelUse.class,
            StintResult.RunLap.class,
            StintResult.Run.class,
            StintResult.class,
            StintDoubtResult.class,
            StintDoubtResult.Interval.class,
            BalanceResult.YawDemand.class,
            BalanceResult.class,
            RemedyResult.Remedy.class,
            RemedyResult.class,
            EvidenceResult.Comparison.class,
            EvidenceResult.SetupPace.class,
            EvidenceResult.Course.class,
            EvidenceResult.Slope.class,
            EvidenceResult.Difference.class,
            EvidenceResult.Scatter.class,
            NormalMixture.Interval.class,
            DayPlan.class,
            DayPlan.Option.class,
            EvidenceResult.Verdict.class,
            FitResult.Estimate.class,
            FitResult.Part.class,
            FitResult.Passage.class,
            FitResult.class,
            FitResult.Collinearity.class,
            FitResult.LapFit.class,
            FitResult.Alignment.class,
            FitResult.Residuals.class,
            DoubtfulPlace.class,
            StintResult.SetFuel.class,
            RoadEdit.Result.class,
            FitResult.Nuisance.class,
            FitResult.Suspicion.class,
            FitResult.RunFit.class,
            FitResult.Word.class,
            OptimisationResult.Miss.class,
            OptimisationResult.Candidate.class,
            OptimisationResult.Range.class,
            QuarterCar.Modes.class,
            RidePass.class,
            RidePass.Energy.class,
            RidePass.Contact.class,
            RidePass.Stroke.class,
            DamperMapResult.Beside.class,
            DamperMapResult.Region.class,
            DamperMapResult.Pair.class,
            RideResult.class,
            OverKerb.class,
            OverKerb.Step.class,
            BriefResult.PlaceShare.class,
            BriefResult.SettingChange.class,
            WingTrade.Setting.class,
            WingTrade.class,
            BriefResult.AeroExchange.class,
            BriefResult.StartPressures.class,
            BriefResult.PressureWorth.class,
            TestPlan.class,
            AdviceResult.Choice.class,
            AdviceResult.BothWays.class,
            AdviceResult.PracticeMove.class,
            ChangePlan.class,
            Heard.class,
            ChangePlan.Turn.class,
            Proof.class,
            Unknown.class,
            CarDraft.Guess.class,
            StopPlansResult.class,
            RatioBoxResult.Choice.class,
            StopPlansResult.Plan.class,
            RobustnessResult.class,
            ModelChoices.Alternative.class,
            FirmChanges.LeftOut.class,
            ChangePlan.Left.class,
            JudgedAdjustments.Asked.class,
            JudgedAdjustments.Known.class,
            SettledVerdicts.Result.class,
            RobustnessResult.Standing.class,
            UnknownShare.class);

    private static List<Integer> numbersOf(Class<?> type) {
        RecordComponent[] components = type.getRecordComponents();
        List<Integer> numbers = new ArrayList<>();
        for (int i = 0; i < components.length; i++) {
            if (components[i].getType() == double.class) {
                numbers.add(i);
            }
        }
        return numbers;
    }

    static Stream<Arguments> badNumbers() {
        List<Arguments> cases = new ArrayList<>();
        for (RecordSamples.Sample sample : RecordSamples.samples()) {
            List<Integer> numbers = numbersOf(sample.sound().getClass());
            assertThat(sample.names()).as("names for %s", sample.sound()).hasSameSizeAs(numbers);
            for (int k = 0; k < sample.names().length; k++) {
                for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
                    boolean noLimit = sample.names()[k].equals("speed limit") && bad == NO_LIMIT;
                    if (!noLimit) {
                        cases.add(Arguments.of(sample.sound(), numbers.get(k), bad, sample.names()[k]));
                    }
                }
            }
        }
        return cases.stream();
    }

    @ParameterizedTest(name = "{0}, component {1} = {2}")
    @MethodSource("badNumbers")
    void aRecordRefusesWhatIsNoNumberAndNamesTheField(Record sound, int component, double bad, String name) {
        assertThatThrownBy(() -> changed(sound, component, bad))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining(name)
                .hasMessageContaining(Double.toString(bad));
    }

    /** The same record with one component changed. */
    private static void changed(Record sound, int component, double value) throws Throwable {
        RecordComponent[] components = sound.getClass().getRecordComponents();
        Class<?>[] types =
                Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        Object[] values = new Object[components.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = components[i].getAccessor().invoke(sound);
        }
        values[component] = value;
        Constructor<?> constructor = sound.getClass().getDeclaredConstructor(types);
        try {
            if (sound instanceof SurveyPoint) {
                // A point is looked at when its survey is built.
                new Survey(List.of((SurveyPoint) constructor.newInstance(values)), true, true);
            } else if (sound instanceof Wing.Setting) {
                // A setting is looked at when its wing is built.
                new Wing("rear", List.of((Wing.Setting) constructor.newInstance(values)));
            } else if (sound instanceof Adjustment.Range) {
                // A range is looked at when its adjustment is built, which has the name.
                RecordSamples.wing((Adjustment.Range) constructor.newInstance(values));
            } else {
                constructor.newInstance(values);
            }
        } catch (InvocationTargetException refused) {
            throw refused.getCause();
        }
    }

    @Test
    void noPublicRecordWithNumbersIsForgottenHere() throws IOException, ClassNotFoundException {
        Set<Class<?>> covered =
                RecordSamples.samples().stream().map(s -> s.sound().getClass()).collect(Collectors.toSet());
        Path classes = Path.of("target", "classes");
        List<Path> files;
        try (Stream<Path> walk = Files.walk(classes)) {
            files = walk.filter(p -> p.toString().endsWith(".class")).toList();
        }
        assertThat(files).isNotEmpty();
        List<String> forgotten = new ArrayList<>();
        for (Path file : files) {
            String name =
                    classes.relativize(file).toString().replace(".class", "").replaceAll("[/\\\\]", ".");
            if (name.endsWith("package-info") || name.equals("module-info")) {
                continue;
            }
            Class<?> type = Class.forName(name, false, getClass().getClassLoader());
            if (type.isRecord()
                    && Modifier.isPublic(type.getModifiers())
                    && !RESULTS.contains(type)
                    && !numbersOf(type).isEmpty()
                    && !covered.contains(type)) {
                forgotten.add(name);
            }
        }
        assertThat(forgotten).as("records neither guarded here nor results").isEmpty();
    }
}
