package dev.filmward.alarm;

/**
 * A finding with its cause as machines know it.
 *
 * @param code of a cause in the plant's list, or one of the two beside it
 * @param note free text beside the cause; may be empty
 */
public record CodedFinding(String code, String note, Finding finding) {}
