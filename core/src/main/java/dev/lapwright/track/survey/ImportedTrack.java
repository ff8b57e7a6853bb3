package dev.lapwright.track.survey;

import dev.lapwright.track.Track;

/**
 * A track made from a survey, with what was done to make it.
 *
 * @param track laid out with the start heading and altitude of the survey
 * @param report of the import
 * @param band of the curvature; null where it cannot be told
 */
public record ImportedTrack(Track track, ImportReport report, CurvatureBand band) {
    /** The same, its path said to be the road's own line or one that a car drove. */
    public ImportedTrack withPath(Track.Path path) {
        return new ImportedTrack(track.withPath(path), report, band);
    }
}
