package dev.filmward.diagnosis;

/**
 * What a condition of a signature came to.
 *
 * @param degree 1 where the condition is met; less, down to 0, the further it is off
 * @param words a sentence with the number
 */
public record Evidence(Condition condition, double value, double degree, String words) {}
