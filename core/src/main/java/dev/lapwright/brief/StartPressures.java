package dev.lapwright.brief;

import dev.lapwright.study.pressures.PressureResult;

/**
 * Pressures to start from. With logged pairs they are those that the pairs lead to. Without, the gas is supposed to run as hot
 * as the tyre does in the car's document, from cold tyres as warm as the air: a place to begin, to be corrected after the
 * first run by its pairs.
 *
 * @param study the pressures; without logged pairs its pairs are the supposed ones, and so are its rises
 * @param logged whether the pairs were logged
 * @param gasTempC temperature at which the gas is supposed to run, degC; NaN with logged pairs
 * @param hotFrontKpa hot pressure at which the front tyres of the car stand, kPa gauge
 * @param hotRearKpa the same at the rear
 */
public record StartPressures(
        PressureResult study, boolean logged, double gasTempC, double hotFrontKpa, double hotRearKpa) {}
