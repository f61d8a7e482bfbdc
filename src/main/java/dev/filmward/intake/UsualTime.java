package dev.filmward.intake;

import java.time.DateTimeException;
import java.time.LocalDate;

/**
 * Reads the times that most gauges write, {@code 2026-11-25T09:30:00Z} or with an offset such as
 * {@code +01:00} for the {@code Z}, without making an object but when the date changes. Leaves all
 * others to {@link TimeText}. One owner, one thread.
 */
final class UsualTime {
  private static final int SHORTEST = 20;
  private static final int WITH_OFFSET = 25;
  private static final int NO_NUMBER = -1;

  private int year;
  private int month;
  private int day;
  private long startOfDay;
  private long epochSecond;

  /** Whether the bytes are such a time. */
  boolean read(byte[] text, int start, int end) {
    int length = end - start;
    if ((length != SHORTEST && length != WITH_OFFSET)
        || text[start + 4] != '-'
        || text[start + 7] != '-'
        || (text[start + 10] != 'T' && text[start + 10] != ' ')) {
      return false;
    }
    int second = clock(text, start + 11);
    if (second < 0 || !date(text, start)) {
      return false;
    }
    epochSecond = startOfDay + second;
    return length == SHORTEST ? text[start + 19] == 'Z' : offset(text, start + 19);
  }

  /** Of the time read last, since 1970 UTC. */
  long epochSecond() {
    return epochSecond;
  }

  private boolean date(byte[] text, int start) {
    int century = number(text, start);
    int yearOfCentury = number(text, start + 2);
    int newYear = century * 100 + yearOfCentury;
    int newMonth = number(text, start + 5);
    int newDay = number(text, start + 8);
    if ((century | yearOfCentury | newMonth | newDay) < 0 || newYear < 1) {
      return false;
    }
    if (newYear == year && newMonth == month && newDay == day) {
      return true;
    }
    try {
      startOfDay = LocalDate.of(newYear, newMonth, newDay).toEpochDay() * 86_400;
    } catch (DateTimeException e) {
      return false;
    }
    year = newYear;
    month = newMonth;
    day = newDay;
    return true;
  }

  private static int clock(byte[] text, int start) {
    int hour = number(text, start);
    int minute = number(text, start + 3);
    int second = number(text, start + 6);
    boolean isTime =
        text[start + 2] == ':'
            && text[start + 5] == ':'
            && (hour | minute | second) >= 0
            && hour < 24
            && minute < 60
            && second < 60;
    return isTime ? (hour * 60 + minute) * 60 + second : NO_NUMBER;
  }

  private boolean offset(byte[] text, int start) {
    int hours = number(text, start + 1);
    int minutes = number(text, start + 4);
    boolean isOffset = text[start + 3] == ':' && (hours | minutes) >= 0 && hours < 18;
    if (!isOffset || minutes > 59 || (text[start] != '+' && text[start] != '-')) {
      return false;
    }
    int seconds = (hours * 60 + minutes) * 60;
    epochSecond -= text[start] == '+' ? seconds : -seconds;
    return true;
  }

  /** Two digits. */
  private static int number(byte[] text, int start) {
    int tens = text[start] - '0';
    int ones = text[start + 1] - '0';
    return tens < 0 || tens > 9 || ones < 0 || ones > 9 ? NO_NUMBER : tens * 10 + ones;
  }
}
