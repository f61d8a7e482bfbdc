package dev.filmward.pipeline;

/**
 * What a person says was found about an alarm.
 *
 * @param cause the code or the words of a cause of the plant's list; {@code other}; or {@code
 *     not-found-yet}
 * @param note free text beside the cause; another cause in words where it is {@code other}
 * @param action what was done; empty where that is still to come
 */
public record Explanation(String cause, String note, String action, String by) {}
