package dev.filmward.intake;

import java.time.LocalDateTime;
import java.time.YearMonth;

/**
 * Splits an ISO 8601 date and time, written in bytes, into its numbers: {@code
 * 2026-11-25T09:30:00.5+01:00}, with a space for the {@code T}, without seconds, without a fraction
 * (after a point or a comma, of any length, nine digits of which count), and with the offset as
 * {@code Z}, {@code +01:00}, {@code +0100}, {@code +01} or not at all. One owner, one thread.
 */
final class TimeText {
  private static final int NONE = -1;
  private static final int LARGEST_OFFSET_S = 18 * 3600;

  private byte[] bytes = {};
  private int index;
  private int end;
  private boolean sound;

  private int year;
  private int month;
  private int day;
  private int hour;
  private int minute;
  private int second;
  private int nano;
  private boolean hasOffset;
  private int offsetS;

  /** Whether the bytes are a date and time that exists in the calendar. */
  boolean read(byte[] text, int start, int stop) {
    bytes = text;
    index = start;
    end = stop;
    sound = true;
    date();
    timeOfDay();
    offset();
    return sound && index == end;
  }

  LocalDateTime local() {
    return LocalDateTime.of(year, month, day, hour, minute, second, nano);
  }

  boolean hasOffset() {
    return hasOffset;
  }

  int offsetS() {
    return offsetS;
  }

  private void date() {
    year = number(4, 1, 9999);
    expect('-');
    month = number(2, 1, 12);
    expect('-');
    day = number(2, 1, sound ? YearMonth.of(year, month).lengthOfMonth() : 31);
    if (!take('T') && !take('t')) {
      expect(' ');
    }
  }

  private void timeOfDay() {
    hour = number(2, 0, 23);
    expect(':');
    minute = number(2, 0, 59);
    second = take(':') ? number(2, 0, 59) : NONE;
    nano = second != NONE && (take('.') || take(',')) ? fraction() : 0;
    second = Math.max(second, 0);
  }

  private void offset() {
    while (index < end && bytes[index] == ' ') {
      index++;
    }
    hasOffset = index < end;
    offsetS = hasOffset && !take('Z') && !take('z') ? numericOffset() : 0;
    sound &= Math.abs(offsetS) <= LARGEST_OFFSET_S;
  }

  private int numericOffset() {
    int sign = take('-') ? -1 : 1;
    if (sign > 0) {
      expect('+');
    }
    int seconds = number(2, 0, 18) * 3600;
    if (index < end) {
      index += bytes[index] == ':' ? 1 : 0;
      seconds += number(2, 0, 59) * 60;
    }
    return sign * seconds;
  }

  private int number(int digits, int least, int greatest) {
    int value = 0;
    for (int i = 0; i < digits; i++) {
      value = value * 10 + digit();
    }
    sound &= value >= least && value <= greatest;
    return value;
  }

  private int digit() {
    int digit = index < end ? bytes[index] - '0' : NONE;
    sound &= digit >= 0 && digit <= 9;
    index++;
    return digit;
  }

  private int fraction() {
    int value = digit();
    int digits = 1;
    for (; index < end && bytes[index] >= '0' && bytes[index] <= '9'; index++) {
      if (digits < 9) {
        value = value * 10 + bytes[index] - '0';
        digits++;
      }
    }
    for (; digits < 9; digits++) {
      value *= 10;
    }
    return value;
  }

  private boolean take(char sign) {
    boolean there = index < end && bytes[index] == sign;
    index += there ? 1 : 0;
    return there;
  }

  private void expect(char sign) {
    sound &= take(sign);
  }
}
