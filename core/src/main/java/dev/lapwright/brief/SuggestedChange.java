package dev.lapwright.brief;

/**
 * One change of a suggested setup, and its reason.
 *
 * @param change what is turned
 * @param undone what the change does in the suggested setup: the lap with this one alone put back where it was, against the
 *     lap of the suggested setup; missing where there is no lap with it put back
 * @param alone what the change does to the car as it stands, made by itself; missing where there is no lap with it
 */
public record SuggestedChange(SettingChange change, BriefPart<ChangeEffect> undone, BriefPart<ChangeEffect> alone) {}
