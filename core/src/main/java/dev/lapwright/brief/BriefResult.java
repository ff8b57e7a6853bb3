package dev.lapwright.brief;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.lap.Lap;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.stint.StintResult;
import dev.lapwright.track.Track;
import java.util.List;

/**
 * A brief. All parts but suggestion and tests are about the car as it stands; each part stands alone.
 *
 * @param choices what was asked
 * @param car as it stands
 * @param track where
 * @param conditions the day
 * @param lap of the car as it stands
 * @param places corners and what lies between them, in driving order, one that spans the start line last
 * @param sensitivity what is worth changing
 * @param suggestion the setup suggested, and why
 * @param wings what each adjustment that moves wings or areas trades, at least one
 * @param exchange what drag, downforce and grip are worth to each other
 * @param gearing what the lap makes of the gears, and of others
 * @param balance by phase of each corner
 * @param pressures to start from
 * @param stint fuel for the race
 * @param tests what to drive to see whether it is so, in order
 * @param proof what the laps driven proved; missing also where no log was given
 */
public record BriefResult(
        BriefChoices choices,
        Car car,
        Track track,
        Conditions conditions,
        Lap lap,
        List<PlaceShare> places,
        BriefPart<BriefSensitivity> sensitivity,
        BriefPart<SuggestedSetup> suggestion,
        BriefPart<List<WingTrade>> wings,
        BriefPart<AeroExchange> exchange,
        BriefPart<GearingResult> gearing,
        BriefPart<BalanceResult> balance,
        BriefPart<StartPressures> pressures,
        BriefPart<StintResult> stint,
        BriefPart<TestPlan> tests,
        BriefPart<Proof> proof) {
    public BriefResult {
        places = List.copyOf(places);
    }
}
