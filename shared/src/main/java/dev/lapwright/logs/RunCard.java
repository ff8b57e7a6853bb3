package dev.lapwright.logs;

import dev.lapwright.brief.Proof;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.JsonReader;
import dev.lapwright.text.JsonValue;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Card of the runs of a brief, read back from the JSON beside its page: what the car is set to in each run, in their order, for logs that do
 * not say.
 *
 * @param name of the file
 * @param setups one for each run, as a log names them: {@link Proof#BASE}, or settings; at least three
 */
public record RunCard(String name, List<String> setups) {
    private static final String REMEDY = "give the JSON that 'lapwright brief' wrote beside the page with the card";

    public RunCard {
        setups = List.copyOf(setups);
    }

    /**
     * The card in a text.
     *
     * @throws DocumentException if it is no JSON of a brief, or its card has no run to drive
     */
    public static RunCard read(DocumentSource source) {
        FaultList faults = new FaultList(source.name());
        JsonValue root = JsonReader.parse(source, faults);
        faults.throwIfAny();
        if (!text(field(root, "lapwright")).startsWith("brief/")) {
            throw new DocumentException(source.name(), "this is no brief", REMEDY);
        }
        List<String> setups = new ArrayList<>();
        Map<String, Double> before = new LinkedHashMap<>();
        for (JsonValue run : items(field(field(root, "tests"), "runs"))) {
            if (!text(field(run, "fate")).equals("drive")) {
                continue;
            }
            // On the card each test is on top of those before it, and the setup before it comes back afterwards.
            Map<String, Double> after = new LinkedHashMap<>(before);
            for (JsonValue change : items(field(run, "changes"))) {
                after.put(text(field(change, "name")), number(field(change, "to")));
            }
            if (setups.isEmpty()) {
                setups.add(setup(before));
            }
            setups.add(setup(after));
            setups.add(setup(before));
            before = after;
        }
        if (setups.isEmpty()) {
            throw new DocumentException(
                    source.name(),
                    "its card has no run that the laps there were can show, so it sets none to drive",
                    "name the setups in the log, or say them by --with");
        }
        return new RunCard(source.name(), setups);
    }

    private static JsonValue field(JsonValue value, String name) {
        JsonValue.Member member =
                value instanceof JsonValue.Obj object ? object.members().get(name) : null;
        return member == null ? new JsonValue.Null(value.place()) : member.value();
    }

    private static List<JsonValue> items(JsonValue value) {
        return value instanceof JsonValue.Arr list ? list.items() : List.of();
    }

    private static String text(JsonValue value) {
        return value instanceof JsonValue.Text text ? text.value() : "";
    }

    private static double number(JsonValue value) {
        return value instanceof JsonValue.Num number ? number.value() : Double.NaN;
    }

    private static String setup(Map<String, Double> settings) {
        return settings.isEmpty()
                ? Proof.BASE
                : settings.entrySet().stream()
                        .map(setting -> setting.getKey() + "=" + Check.text(setting.getValue()))
                        .collect(Collectors.joining(","));
    }

    /**
     * Refuses a log with another number of runs.
     *
     * @param log its name
     * @param runs that it holds
     */
    public void check(String log, int runs) {
        if (runs != setups.size()) {
            throw new InvalidValueException(
                    log,
                    "it holds " + runs + (runs == 1 ? " run" : " runs") + ", and the card of " + name + " "
                            + setups.size() + ": " + String.join("; ", setups),
                    "flag out laps and in laps, or name what was set in each run");
        }
    }

    /**
     * A log of lap times whose runs are those of this card.
     *
     * @throws InvalidValueException if it names setups itself, or has another number of runs
     */
    public LapLogFile naming(LapLogFile file) {
        TimingLog log = file.log();
        if (!log.setups().equals(List.of(LapLogReader.ONE_SETUP))
                && !log.setups().equals(List.of(Proof.BASE))) {
            throw new InvalidValueException(
                    file.name(), "it names what was set, and a card is given as well", "leave --card out");
        }
        check(file.name(), log.runs());
        List<TimingLog.Lap> laps = new ArrayList<>();
        for (int i = 0; i < log.laps().size(); i++) {
            TimingLog.Lap lap = log.laps().get(i);
            int run = log.run(i);
            laps.add(new TimingLog.Lap(
                    lap.number(), lap.time(), setups.get(run), Integer.toString(run + 1), lap.flag()));
        }
        return new LapLogFile(
                file.name(), TimingLog.of(laps), file.columns() + "; setups run by run from the card of " + name);
    }
}
