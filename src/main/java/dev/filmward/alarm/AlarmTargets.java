package dev.filmward.alarm;

/**
 * What IEC 62682, ANSI/ISA-18.2 and EEMUA 191 call acceptable for one operator position. All from
 * memory, except the share of priorities, which follows published tables.
 */
public final class AlarmTargets {
  public static final double PER_TEN_MINUTES = 1;
  public static final double PER_TEN_MINUTES_AT_MOST = 2;
  public static final double PER_HOUR = 6;
  public static final double PER_HOUR_AT_MOST = 12;
  public static final double PER_DAY = 150;
  public static final double PER_DAY_AT_MOST = 300;
  public static final int MANY_IN_AN_HOUR = 30;
  public static final double SHARE_OF_HOURS_WITH_MANY = 0.01;
  public static final int IN_TEN_MINUTES = 10;
  public static final double SHARE_IN_FLOOD = 0.01;
  public static final int STALE_ON_A_DAY = 5;
  public static final double TOP_TEN_SHARE = 0.05;
  public static final double LOW_SHARE = 0.80;
  public static final double MEDIUM_SHARE = 0.15;
  public static final double HIGH_SHARE = 0.05;

  private AlarmTargets() {}
}
