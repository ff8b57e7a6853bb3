package dev.lapwright.study;

/**
 * Memory of the parts of one study, as its laps: those done before are not done again, and each one done is kept at once. What it
 * recalls must be what the study would find.
 */
public interface StudyMemory {
    /** No memory. */
    StudyMemory NONE = new StudyMemory() {
        @Override
        public void recall(Recalled recalled) {
            // There is nothing.
        }

        @Override
        public void keep(String part, double[] numbers, String words) {
            // And nothing stays.
        }

        @Override
        public StudyMemory of(String study) {
            return this;
        }
    };

    /** Taker of what is recalled. */
    @FunctionalInterface
    interface Recalled {
        /**
         * @param part name of a part within its study, without a space
         * @param numbers what it found, as the study keeps it; its own to keep
         * @param words beside them, as why there was no lap; empty for none
         */
        void part(String part, double[] numbers, String words);
    }

    /** Hands over all that is remembered, before the first part is done. A part may come twice: the later counts. */
    void recall(Recalled recalled);

    /** Keeps a part; called by several threads. Arguments as in {@link Recalled#part}. */
    void keep(String part, double[] numbers, String words);

    /** The memory of a study within this one, by a name of its own without a space. */
    StudyMemory of(String study);

    /** Taker of what is recalled of parts that are counted. */
    @FunctionalInterface
    interface Counted {
        /** As {@link Recalled#part}. */
        void part(int place, double[] numbers, String words);
    }

    /** Hands over what is remembered of parts named by their places, 0 to below a count; what is none of them is as if it were not there. */
    default void recallCounted(int count, Counted recalled) {
        recall((part, numbers, words) -> {
            int place = part.matches("[0-9]{1,9}") ? Integer.parseInt(part) : count;
            if (place < count) {
                recalled.part(place, numbers, words);
            }
        });
    }
}
