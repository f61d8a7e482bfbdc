package dev.filmward.alarm;

import dev.filmward.diagnosis.Revision;
import java.util.OptionalLong;

/**
 * What becomes of a roll, as a person decided.
 *
 * @param alarmId the alarm for which it was decided, where there was one
 */
public record Disposition(RollKey roll, RollState state, Revision revision, OptionalLong alarmId) {}
