package dev.lapwright.inspection;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Unit;
import dev.lapwright.documents.Documents;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.files.ColumnChoice;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentFault;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.logs.DrivenLogs;
import dev.lapwright.logs.LapLogs;
import dev.lapwright.logs.PressureLog;
import dev.lapwright.sense.CarOddities;
import dev.lapwright.sense.Oddity;
import dev.lapwright.sense.RoadOddities;
import dev.lapwright.sense.SampleOddities;
import dev.lapwright.sense.UsualValues;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.surveys.ImportSource;
import dev.lapwright.surveys.SurveyFile;
import dev.lapwright.surveys.Surveys;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.survey.ImportChoices;
import dev.lapwright.track.survey.ImportedTrack;
import dev.lapwright.track.survey.SurveyPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * Inspection of one file: all that keeps it from being read, or all that is odd about what it says.
 *
 * @param name of the file
 * @param kind what it was taken for; null where that could not be told
 * @param faults for which it cannot be used; unmodifiable
 * @param oddities of what it says, where it can; unmodifiable
 */
public record Inspection(String name, FileKind kind, List<Oddity> faults, List<Oddity> oddities) {
    /** Share of a road's length that lies between its ends, from which on it is no lap of anything. */
    private static final double OPEN = 0.15;

    public Inspection {
        faults = List.copyOf(faults);
        oddities = List.copyOf(oddities);
    }

    /** Whether it can be used. */
    public boolean isUsable() {
        return faults.isEmpty();
    }

    /** The inspection of what cannot even be found. */
    public static Inspection ofNothing(String name, LapwrightException why) {
        return new Inspection(name, null, List.of(new Oddity("", why.problem(), why.remedy())), List.of());
    }

    /**
     * The inspection of a text.
     *
     * @param as its kind, null to find out
     * @param car that a setup is for; null to take a setup as it stands
     * @param columns of a log or survey whose headings do not tell what they hold
     */
    public static Inspection of(DocumentSource source, FileKind as, Car car, List<ColumnChoice> columns) {
        FileKind kind = as;
        try {
            kind = as == null ? FileKind.of(source) : as;
            return new Inspection(source.name(), kind, List.of(), oddities(source, kind, car, columns));
        } catch (DocumentException e) {
            List<Oddity> faults = new ArrayList<>();
            for (DocumentFault fault : e.faults()) {
                faults.add(new Oddity(fault.place(), fault.problem(), fault.remedy()));
            }
            return new Inspection(source.name(), kind, faults, List.of());
        } catch (LapwrightException e) {
            return new Inspection(
                    source.name(), kind, List.of(new Oddity(e.place(), e.problem(), e.remedy())), List.of());
        }
    }

    private static List<Oddity> oddities(DocumentSource source, FileKind kind, Car car, List<ColumnChoice> columns) {
        return switch (kind) {
            case CAR -> CarOddities.of(Documents.car(source), Conditions.STANDARD);
            case SETUP -> CarOddities.of(car.with(Documents.setup(source, car)), Conditions.STANDARD);
            case CIRCUIT -> ofRoad(Documents.circuit(source));
            case CONDITIONS -> UsualValues.of(Documents.conditions(source));
            case LINE -> {
                Documents.line(source);
                yield List.of();
            }
            case SURVEY -> ofSurvey(source, columns);
            case LOG -> ofLog(source, columns);
            case TIMES -> ofTimes(LapLogs.read(source).log());
            case PRESSURES -> {
                PressureLog.read(source, new PressureDay(20, 20, 1013.25), 20, Unit.PSI);
                yield List.of();
            }
        };
    }

    private static List<Oddity> ofRoad(Track track) {
        return RoadOddities.of(track.stations(StationSpacing.DEFAULT));
    }

    private static List<Oddity> ofLog(DocumentSource source, List<ColumnChoice> columns) {
        List<Oddity> odd = new ArrayList<>(DrivenLogs.oddities(source, columns));
        for (String remark : DrivenLogs.read(source, columns).remarks()) {
            odd.add(new Oddity("", remark.replaceAll("\\.$", ""), ""));
        }
        return odd;
    }

    /** Points by themselves, and the road that they make. */
    private static List<Oddity> ofSurvey(DocumentSource source, List<ColumnChoice> columns) {
        SurveyFile file = Surveys.readFile(source, columns, false);
        if (file.isLog()) {
            return ofLog(source, columns);
        }
        List<SurveyPoint> points = file.survey().points();
        double[] x = points.stream().mapToDouble(SurveyPoint::x).toArray();
        double[] y = points.stream().mapToDouble(SurveyPoint::y).toArray();
        double[] z = file.survey().hasElevation()
                ? points.stream().mapToDouble(SurveyPoint::z).toArray()
                : new double[0];
        List<Oddity> odd = new ArrayList<>(SampleOddities.ofPoints(x, y, z, i -> "point " + (i + 1)));
        if (!file.passedOver().isEmpty()) {
            odd.add(new Oddity(
                    "headings",
                    "not understood: " + String.join(", ", file.passedOver()),
                    "say what they hold with --column"));
        }
        ImportedTrack road = road(file, x, y, odd);
        for (String warning : road.report().warnings()) {
            odd.add(new Oddity("the road it makes", warning, ""));
        }
        for (Oddity of : ofRoad(road.track())) {
            odd.add(new Oddity("the road it makes, " + of.place(), of.problem(), of.remedy()));
        }
        return odd;
    }

    /** The lap that the points are, or else the open run. */
    private static ImportedTrack road(SurveyFile file, double[] x, double[] y, List<Oddity> odd) {
        try {
            return road(file, ImportChoices.circuit());
        } catch (LapwrightException noLap) {
            ImportedTrack road = road(file, ImportChoices.openRun());
            int last = x.length - 1;
            if (Math.hypot(x[last] - x[0], y[last] - y[0]) < OPEN * road.track().length()) {
                odd.add(new Oddity("the road it makes", "taken as an open run: " + noLap.problem(), noLap.remedy()));
            }
            return road;
        }
    }

    private static ImportedTrack road(SurveyFile file, ImportChoices choices) {
        return ImportSource.of(file, choices, OptionalInt.empty()).imported("road", choices);
    }

    private static List<Oddity> ofTimes(TimingLog log) {
        List<TimingLog.Lap> flying = log.laps().stream()
                .filter(lap -> lap.flag() == TimingLog.Flag.NONE)
                .toList();
        return SampleOddities.ofLaps(
                flying.stream().mapToDouble(TimingLog.Lap::time).toArray(),
                i -> "lap " + flying.get(i).number());
    }
}
