package dev.filmward.web;

import dev.filmward.people.Permission;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Handler;
import io.javalin.http.sse.SseClient;
import io.javalin.security.RouteRole;
import java.util.function.Consumer;

/** The routes, each with the permission that it needs; none can be added without one. */
final class Routes {
  private final RoutesConfig routes;

  Routes(RoutesConfig routes) {
    this.routes = routes;
  }

  /** What a route needs, in the form that the server asks for. */
  record Needs(Permission permission) implements RouteRole {}

  void get(String path, Permission needed, Handler handler) {
    routes.get(path, handler, new Needs(needed));
  }

  void post(String path, Permission needed, Handler handler) {
    routes.post(path, handler, new Needs(needed));
  }

  void events(String path, Permission needed, Consumer<SseClient> client) {
    routes.sse(path, client, new Needs(needed));
  }
}
