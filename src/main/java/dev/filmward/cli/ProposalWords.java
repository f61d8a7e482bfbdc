package dev.filmward.cli;

import dev.filmward.intake.recognition.Proposal;
import dev.filmward.intake.recognition.Question;

/** Says of a proposed mapping what a person should do with it. Stateless. */
final class ProposalWords {
  private ProposalWords() {}

  static String of(String file, Proposal proposal) {
    StringBuilder text = new StringBuilder();
    for (Question question : proposal.questions()) {
      text.append(question.words()).append('\n');
      for (Question.Choice choice : question.choices()) {
        text.append("  ").append(choice.words()).append(": ");
        text.append(answer(question, choice.value())).append('\n');
      }
      if (question.choices().isEmpty()) {
        text.append("  ").append(answer(question, "...")).append('\n');
      }
    }
    text.append(
        proposal.questions().isEmpty()
            ? "The mapping above reads " + file + ". Keep it in a file for --mapping."
            : "The mapping above is not finished: answer with --answer, or write over every ? in it.");
    return text.toString().replaceAll("[\\p{Cntrl}&&[^\n]]", "\uFFFD");
  }

  private static String answer(Question question, String value) {
    return "--answer \"" + question.key() + "=" + value + "\"";
  }
}
