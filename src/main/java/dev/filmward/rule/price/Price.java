package dev.filmward.rule.price;

/**
 * What a choice of tests costs and gives.
 *
 * @param samplesToFalseAlarm average number of samples up to the first false alarm on any chart of
 *     the line; infinite without tests
 * @param falseAlarmsPerShift expected number, if the charts start afresh after each
 * @param samplesToSeeOneSigma average number of samples until the mean chart of a characteristic
 *     signals that its mean has moved by one standard deviation of the charted means
 */
public record Price(
    double samplesToFalseAlarm, double falseAlarmsPerShift, double samplesToSeeOneSigma) {}
