package dev.filmward.web;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.intake.FileRefused;
import dev.filmward.intake.MappingFault;
import dev.filmward.intake.StructuresFault;
import dev.filmward.store.StoreException;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.io.IOException;
import java.util.NoSuchElementException;
import java.util.concurrent.CancellationException;
import org.eclipse.jetty.io.EofException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Turns what went wrong into one shape of answer: what, and what instead. */
final class ErrorReplies {
  private static final Logger LOG = LoggerFactory.getLogger(ErrorReplies.class);

  /** Under this an exception with a status of its own says what to do. */
  static final String INSTEAD = "instead";

  /** Under this it says in a word what the page must ask the person for; often nothing. */
  static final String ASKS = "asks";

  private ErrorReplies() {}

  static void map(RoutesConfig routes) {
    routes.exception(HttpResponseException.class, ErrorReplies::withStatus);
    routes.exception(
        JacksonException.class,
        (e, ctx) -> reply(ctx, 400, "the body is not the JSON expected", "send a JSON object"));
    routes.exception(
        IllegalArgumentException.class,
        (e, ctx) -> reply(ctx, 400, words(e), "correct it and send it again"));
    routes.exception(
        StructuresFault.class,
        (e, ctx) -> reply(ctx, 400, words(e), "correct the file and send it again"));
    routes.exception(
        MappingFault.class,
        (e, ctx) -> reply(ctx, 400, words(e), "correct the mapping and send it again"));
    routes.exception(
        FileRefused.class,
        (e, ctx) -> reply(ctx, 422, words(e), "change the export, then try again"));
    routes.exception(
        NoSuchElementException.class,
        (e, ctx) -> reply(ctx, 404, words(e), "look at the board for what there is"));
    routes.exception(
        CancellationException.class,
        (e, ctx) -> reply(ctx, 409, words(e), "begin it anew when it suits"));
    routes.exception(
        IllegalStateException.class,
        (e, ctx) -> reply(ctx, 409, words(e), "reload and look again"));
    routes.exception(
        StoreException.class,
        (e, ctx) -> reply(ctx, 503, words(e), "ask whoever looks after the server"));
    routes.exception(EofException.class, ErrorReplies::brokenOff);
    routes.exception(IOException.class, ErrorReplies::noRoom);
    routes.exception(Exception.class, ErrorReplies::unexpected);
  }

  private static String instead(HttpResponseException e) {
    return e.getDetails().getOrDefault(INSTEAD, "see the help page");
  }

  private static void withStatus(HttpResponseException e, Context ctx) {
    ObjectNode answer = answer(words(e), instead(e));
    String asks = e.getDetails().get(ASKS);
    if (asks != null) {
      answer.withObject("error").put(ASKS, asks);
    }
    ctx.status(e.getStatus()).json(answer);
  }

  private static void brokenOff(Exception e, Context ctx) {
    LOG.info("{} {}: the other side broke off; nothing of it is kept", ctx.method(), ctx.path());
    reply(ctx, 400, "the request broke off", "send it again");
  }

  private static void noRoom(Exception e, Context ctx) {
    LOG.error("{} {} failed", ctx.method(), ctx.path(), e);
    reply(
        ctx,
        503,
        "what was sent cannot be kept: " + words(e),
        "the disk may be full; ask whoever looks after the server, then send it again");
  }

  private static void unexpected(Exception e, Context ctx) {
    LOG.error("{} {} failed", ctx.method(), ctx.path(), e);
    reply(ctx, 500, "something went wrong in the server", "its log has the details");
  }

  private static String words(Exception e) {
    return e.getMessage() == null ? e.toString() : e.getMessage();
  }

  private static void reply(Context ctx, int status, String what, String instead) {
    ctx.status(status).json(answer(what, instead));
  }

  private static ObjectNode answer(String what, String instead) {
    ObjectNode answer = Wire.object();
    answer.putObject("error").put("what", what).put("instead", instead);
    return answer;
  }
}
