package dev.lapwright.results;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.slip.SlipModel;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Model that a lap is solved by: the fast one that all studies use, or the fuller one beside it. */
public enum LapModel {
    /** Forces of four wheels from closed laws, in a millisecond or two. */
    FAST("fast"),
    /** The equilibrium of four slipping wheels at each place, some fifty times slower: {@link SlipModel}. */
    FULLER("fuller");

    private static final int PLACES = 4;

    private final String word;

    LapModel(String word) {
        this.word = word;
    }

    /** As a user writes it. */
    public String word() {
        return word;
    }

    /** The model of this name; empty for a word that is none. */
    public static Optional<LapModel> named(String word) {
        return Arrays.stream(values()).filter(model -> model.word.equals(word)).findFirst();
    }

    /** The model that a lap was solved by. */
    public static LapModel of(Lap lap) {
        return lap.isByAnotherModel() ? FULLER : FAST;
    }

    /** A solver of laps by it, at the default spacing. */
    public LapSolver on(Track track) {
        return this == FULLER ? SlipModel.laps(track.stations(StationSpacing.DEFAULT)) : LapSolver.on(track);
    }

    /** Distances of the stations where the fuller model had no answer, m. */
    static List<Double> unchecked(Lap lap) {
        List<Double> at = new ArrayList<>();
        for (int i = 0; i < lap.count(); i++) {
            if (lap.isUnchecked(i)) {
                at.add(lap.value(Channel.DISTANCE, i));
            }
        }
        return at;
    }

    /** What is to be known of a lap by the fuller model, for people. */
    static String told(Lap lap) {
        String what = "fuller: equilibrium of four slipping wheels at each place";
        List<Double> at = unchecked(lap);
        if (at.isEmpty()) {
            return what;
        }
        List<String> places = new ArrayList<>();
        for (double s : at.subList(0, Math.min(PLACES, at.size()))) {
            Optional<Corner> corner = Corner.at(lap.stations().corners(), s);
            places.add(Numbers.fixed(s, 0) + " m"
                    + corner.map(one -> " in " + Report.verbatim(one.label())).orElse(""));
        }
        return what + "; none was found at " + at.size() + " of " + lap.count()
                + " stations, where the fast answer stands unchecked (" + String.join(", ", places)
                + (at.size() > PLACES ? ", …" : "") + ")";
    }
}
