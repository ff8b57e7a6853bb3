package dev.lapwright.inspection;

import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.sense.Oddity;
import java.util.List;

/** Report of inspections: file by file, faults first. */
public final class InspectionReport {
    private static final Table<Oddity> FINDINGS = Table.<Oddity>of("Findings")
            .value("place", Oddity::place)
            .value("problem", Oddity::problem)
            .value("remedy", Oddity::remedy);

    private static final Table<Inspection> FILES = Table.<Inspection>of("Files")
            .value("name", Inspection::name)
            .value("kind", file -> file.kind() == null ? "unknown" : file.kind().word())
            .value("usable", Inspection::isUsable)
            .rows("faults", FINDINGS, Inspection::faults)
            .rows("oddities", FINDINGS, Inspection::oddities);

    private InspectionReport() {}

    /** What is said of files. */
    public static Report of(List<Inspection> files) {
        Report report = new Report().field("kind", "check").field("files", FILES, files);
        for (Inspection file : files) {
            report.title(Report.verbatim(file.name()), verdict(file));
            file.faults().forEach(fault -> report.point(text(fault)));
            file.oddities().forEach(odd -> report.point(text(odd)));
            report.gap();
        }
        return report.paragraph(
                "Faults keep a file from being used. What is odd does not: it is allowed, and hardly true of usual cars,"
                        + " roads and loggers.");
    }

    private static String verdict(Inspection file) {
        String kind = file.kind() == null ? "" : ", " + file.kind().word();
        int faults = file.faults().size();
        int odd = file.oddities().size();
        if (faults > 0) {
            return kind + ": cannot be used, " + faults + (faults == 1 ? " fault" : " faults");
        }
        return kind + ": " + (odd == 0 ? "nothing odd" : "can be used, " + odd + (odd == 1 ? " oddity" : " oddities"));
    }

    private static String text(Oddity odd) {
        String place = odd.place().isEmpty() ? "" : Report.verbatim(odd.place()) + ": ";
        return place
                + Report.verbatim(odd.problem())
                + (odd.remedy().isEmpty() ? "" : "; " + Report.verbatim(odd.remedy()));
    }
}
