package dev.lapwright.study;

import java.util.Map;
import java.util.concurrent.ConcurrentSkipListMap;

/** Memory of studies that lasts as long as a test. */
public final class MemoryInMind implements StudyMemory {
    private final Map<String, double[]> parts;
    private final String place;

    public MemoryInMind() {
        this(new ConcurrentSkipListMap<>(), "");
    }

    private MemoryInMind(Map<String, double[]> parts, String place) {
        this.parts = parts;
        this.place = place;
    }

    /** What was kept, by the names of studies and part. */
    public Map<String, double[]> parts() {
        return parts;
    }

    @Override
    public void recall(Recalled recalled) {
        parts.forEach((name, numbers) -> {
            if (name.startsWith(place) && name.indexOf('/', place.length()) < 0) {
                recalled.part(name.substring(place.length()), numbers, "");
            }
        });
    }

    @Override
    public void keep(String part, double[] numbers, String words) {
        parts.put(place + part, numbers);
    }

    @Override
    public StudyMemory of(String study) {
        return new MemoryInMind(parts, place + study + "/");
    }
}
