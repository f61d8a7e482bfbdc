package dev.filmward.pipeline;

import dev.filmward.telling.MailServer;
import dev.filmward.telling.Message;
import dev.filmward.telling.Post;
import dev.filmward.telling.Rule;
import dev.filmward.telling.Secret;
import dev.filmward.telling.Sent;
import dev.filmward.telling.Sent.Outcome;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A post that takes everything, but for whom a test says otherwise, and remembers it. */
final class HeldPost implements Post {
  final List<Tried> tried = new ArrayList<>();
  private final Map<String, Outcome> outcomes = new HashMap<>();
  private String crashingFor = "";

  /** An attempt to send a message to somebody. */
  record Tried(String name, Message message, Outcome outcome) {}

  void answer(String name, Outcome outcome) {
    outcomes.put(name, outcome);
  }

  /** The process ends after messages to somebody were taken and before that is noted. */
  void crashFor(String name) {
    crashingFor = name;
  }

  List<String> subjects(String name) {
    return tried.stream()
        .filter(each -> each.name().equals(name))
        .map(each -> each.message().subject())
        .toList();
  }

  @Override
  public Sent send(
      Message message, Rule.Recipient to, Optional<MailServer> mail, Optional<Secret> secret) {
    Outcome outcome = outcomes.getOrDefault(to.name(), Outcome.TAKEN);
    tried.add(new Tried(to.name(), message, outcome));
    if (crashingFor.equals(to.name())) {
      throw new AssertionError("the process ends here");
    }
    return new Sent(outcome, "said " + outcome);
  }
}
