package dev.filmward.alarm;

import dev.filmward.film.Characteristic;
import java.util.List;

/**
 * What a sample did to an alarm.
 *
 * @param alarm as it is now; its id is 0 when it is new
 * @param signalling members that signalled at this sample
 */
public record AlarmChange(Alarm alarm, List<Characteristic> signalling) {
  public AlarmChange {
    signalling = List.copyOf(signalling);
  }
}
