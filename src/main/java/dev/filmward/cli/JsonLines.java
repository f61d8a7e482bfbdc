package dev.filmward.cli;

import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.IThrowableProxy;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;
import ch.qos.logback.core.encoder.EncoderBase;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.slf4j.event.KeyValuePair;

/**
 * One JSON object a line, for machines; all in ASCII, so that nothing in it can end its line.
 * Thread-safe.
 */
public final class JsonLines extends EncoderBase<ILoggingEvent> {
  private static final ObjectMapper MAPPER =
      JsonMapper.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();

  @Override
  public byte[] headerBytes() {
    return new byte[0];
  }

  @Override
  public byte[] footerBytes() {
    return new byte[0];
  }

  @Override
  public byte[] encode(ILoggingEvent event) {
    try {
      return (MAPPER.writeValueAsString(json(event)) + "\n").getBytes(StandardCharsets.US_ASCII);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("texts and numbers are always JSON", e);
    }
  }

  private static ObjectNode json(ILoggingEvent event) {
    ObjectNode node =
        JsonNodeFactory.instance
            .objectNode()
            .put("at", event.getInstant().toString())
            .put("level", event.getLevel().toString())
            .put("logger", event.getLoggerName())
            .put("thread", event.getThreadName());
    event.getMDCPropertyMap().forEach(node::put);
    List<KeyValuePair> pairs = event.getKeyValuePairs();
    if (pairs != null) {
      pairs.forEach(pair -> node.set(pair.key, MAPPER.valueToTree(pair.value)));
    }
    node.put("message", event.getFormattedMessage());
    IThrowableProxy fault = event.getThrowableProxy();
    if (fault != null) {
      node.put("fault", ThrowableProxyUtil.asString(fault));
    }
    return node;
  }
}
