package dev.filmward.web;

import dev.filmward.people.Permission;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Handler;
import io.javalin.http.sse.SseClient;
import io.javalin.security.RouteRole;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** The routes, each with the permission that it needs; none can be added without one. */
final class Routes {
  private final RoutesConfig routes;
  private final WorkResource works;
  private final List<Known> known = new ArrayList<>();

  Routes(RoutesConfig routes, WorkResource works) {
    this.routes = routes;
    this.works = works;
  }

  /** What a route needs, in the form that the server asks for. */
  record Needs(Permission permission) implements RouteRole {}

  /** A route that there is. */
  record Known(String method, String path, Permission permission) {}

  void get(String path, Permission needed, Handler handler) {
    note("GET", path, needed);
    routes.get(path, works.watched(handler), new Needs(needed));
  }

  void post(String path, Permission needed, Handler handler) {
    note("POST", path, needed);
    routes.post(path, works.watched(handler), new Needs(needed));
  }

  void events(String path, Permission needed, Consumer<SseClient> client) {
    note("GET", path, needed);
    routes.sse(path, client, new Needs(needed));
  }

  /** How far something is that somebody waits for; and that nobody waits for it any more. */
  void works(Permission needed) {
    get("/api/v1/work/{id}", needed, works::get);
    post("/api/v1/work/{id}/cancel", needed, works::cancel);
  }

  /** All of them, in the order in which they were added. */
  List<Known> known() {
    return List.copyOf(known);
  }

  private void note(String method, String path, Permission needed) {
    known.add(new Known(method, path, needed));
  }
}
