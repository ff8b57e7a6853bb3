package dev.lapwright.study.sweep;

import dev.lapwright.lap.LapFigures;

/**
 * Memory of the laps of one sweep: those driven before are not driven again, and each one driven is kept at once. What it recalls must
 * be what the sweep would find.
 */
public interface SweepMemory {
    /** No memory. */
    SweepMemory NONE = new SweepMemory() {
        @Override
        public void recall(Recalled recalled) {
            // There is nothing.
        }

        @Override
        public void keep(int index, LapFigures figures, String failure) {
            // And nothing stays.
        }
    };

    /** Taker of what is recalled. */
    @FunctionalInterface
    interface Recalled {
        /**
         * @param index of the point, in the order of the axes, the last fastest
         * @param figures of its lap; null if it has none
         * @param failure why it has none; empty if it has one
         */
        void lap(int index, LapFigures figures, String failure);
    }

    /** Hands over all that is remembered, before the first lap. */
    void recall(Recalled recalled);

    /** Keeps a lap; called by several threads. Arguments as in {@link Recalled#lap}. */
    void keep(int index, LapFigures figures, String failure);
}
