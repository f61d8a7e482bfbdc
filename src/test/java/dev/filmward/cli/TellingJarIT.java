package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import dev.filmward.cli.RunningJar.ServedJar;
import dev.filmward.web.Api;
import dev.filmward.web.SmallFilm;
import jakarta.mail.internet.MimeMessage;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packaged jar sends mail: the providers of the mail library are in it. */
class TellingJarIT {
  @TempDir private Path folder;
  private GreenMail mail;

  @BeforeEach
  void start() {
    mail = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
    mail.start();
  }

  @AfterEach
  void stop() {
    mail.stop();
  }

  @Test
  void anAlarmReachesAPersonByMailAndOneThatWaitedSurvivesARestart() throws Exception {
    Path data = folder.resolve("data");
    SmallFilm film = SmallFilm.withSampleAt(30, Instant.now());
    try (ServedJar served = RunningJar.serve(folder, data, 0)) {
      Api api = served.api();
      tellKim(api);
      api.upload("baseline.csv", film.usual(0, 25));
      api.freeze();
      api.upload("thin.csv", film.thinnerSkin(25, 27, 1));
      Await.until("an attempt failed, since there is no mail server", () -> attempts(api) > 0);
      assertThat(served.jar().stop()).isIn(0, 128 + 15);
      assertThat(served.jar().messages()).doesNotContain("ERROR").doesNotContain("Exception");
    }
    try (ServedJar served = RunningJar.serve(folder, data, 0)) {
      assertThat(served.api().post("/api/v1/telling/settings", settings()).status()).isEqualTo(200);
      Await.until("the mail came", () -> mail.getReceivedMessages().length > 0);
      MimeMessage message = mail.getReceivedMessages()[0];
      assertThat(message.getSubject()).startsWith("Alarm: Skin: thinner than usual, Blown 1");
      assertThat(message.getContent().toString()).contains("Check first:", "lock-out procedure");
      assertThat(served.api().get("/api/v1/alarms").json().get("alarms")).hasSize(1);
    }
  }

  private static int attempts(Api api) {
    JsonNode messages = api.get("/api/v1/telling/outbox").json().get("messages");
    return messages.isEmpty() ? 0 : messages.get(0).get("attempts").asInt();
  }

  private static void tellKim(Api api) {
    String rule =
        """
        {"name": "Kim", "channel": "email", "address": "kim@plant.example", "priority": "low",
         "events": ["opened"], "by": "Ada", "reason": "as agreed"}
        """;
    assertThat(api.post("/api/v1/telling/rules", rule).status()).isEqualTo(200);
  }

  private String settings() {
    return """
        {"mail": {"host": "127.0.0.1", "port": %d, "security": "none", "from": "a@plant.example"},
         "escalation": {}, "by": "Ada", "reason": "as agreed"}
        """
        .formatted(mail.getSmtp().getPort());
  }
}
