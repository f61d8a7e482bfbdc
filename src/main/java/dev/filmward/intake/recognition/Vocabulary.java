package dev.filmward.intake.recognition;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The words of the trade that head columns, in English and German. Case, punctuation and endings
 * such as "no." and "Nr." do not count; umlauts may be written out. Stateless.
 */
final class Vocabulary {
  private static final Pattern LAYER_NUMBER = numbered("layer|ply|schicht|lage|l");
  private static final Pattern LANE_NUMBER =
      numbered("lane|track|spur|bahn|position|pos|messposition|messstelle|stelle|punkt|point");
  private static final Pattern ENDING =
      Pattern.compile(" (no|nr|number|nummer|id|name|code|bezeichnung)$");
  private static final Map<String, Role> ROLES = new HashMap<>();

  static {
    put(
        Role.TAKEN_AT,
        "taken at,timestamp,time stamp,date time,datetime,date and time,date time local,measured at,"
            + "measurement time,zeitstempel,datum uhrzeit,datum zeit,messzeit,messzeitpunkt,"
            + "zeitpunkt,datum und uhrzeit");
    put(Role.DATE, "date,datum,messdatum,tag,measurement date,day");
    put(Role.TIME, "time,uhrzeit,zeit,time of day,clock");
    put(
        Role.LINE,
        "line,linie,anlage,machine,maschine,production line,extrusion line,"
            + "extrusionslinie,extrusionsanlage");
    put(
        Role.STRUCTURE,
        "structure,struktur,aufbau,folienaufbau,product,produkt,recipe,rezept,"
            + "rezeptur,film,folie,film type,folientyp,article,artikel,artikelnummer");
    put(
        Role.ROLL,
        "roll,rolle,rollennummer,rollennr,rollen,reel,wickel,wickelnummer,coil,"
            + "jumbo,mutterrolle");
    put(
        Role.SAMPLE,
        "sample,probe,probennummer,probennr,proben,muster,specimen,messung,"
            + "measurement,scan,scan number");
    put(
        Role.LANE,
        "lane,track,spur,bahn,position,pos,messposition,messstelle,stelle,punkt,point,"
            + "measuring point,cd position,cross position,querposition");
    put(Role.LAYER, "layer,ply,schicht,lage,schichtname,schichtnummer,schichtnr,layer position");
    put(
        Role.TEMPERATURE_C,
        "temperature c,temp c,film temperature c,film temp c,temperatur c,folientemperatur c,"
            + "temp film c,celsius");
    put(
        Role.THICKNESS,
        "thickness,dicke,schichtdicke,layer thickness,thk,value,wert,messwert,"
            + "istwert,reading,measured value,thickness value");
    put(
        Role.TOTAL,
        "total,total thickness,gesamt,gesamtdicke,summe,sum,film thickness,foliendicke,"
            + "dicke gesamt,thickness total,overall");
  }

  private Vocabulary() {}

  /** What a heading, or the key of a line above the header, stands for. */
  static Optional<Role> role(String heading) {
    String plain = plain(heading);
    return Optional.ofNullable(ROLES.get(plain))
        .or(() -> Optional.ofNullable(ROLES.get(ENDING.matcher(plain).replaceFirst(""))));
  }

  /** Which layer a heading numbers, from 1. */
  static OptionalInt layerNumber(String heading) {
    return number(LAYER_NUMBER, heading);
  }

  /** Which lane a heading numbers. */
  static OptionalInt laneNumber(String heading) {
    return number(LANE_NUMBER, heading);
  }

  /** Lower case, umlauts written out, punctuation as single spaces. */
  static String plain(String heading) {
    return heading
        .toLowerCase(Locale.ROOT)
        .replace("\u00e4", "ae")
        .replace("\u00f6", "oe")
        .replace("\u00fc", "ue")
        .replace("\u00df", "ss")
        .replaceAll("[^\\p{L}0-9+]+", " ")
        .strip();
  }

  private static OptionalInt number(Pattern pattern, String heading) {
    Matcher matcher = pattern.matcher(plain(heading));
    return matcher.find()
        ? OptionalInt.of(Integer.parseInt(matcher.group(1)))
        : OptionalInt.empty();
  }

  private static Pattern numbered(String words) {
    return Pattern.compile("(?:^| )(?:" + words + ") ?0*([0-9]{1,4})(?= |$|[a-z])");
  }

  private static void put(Role role, String words) {
    for (String word : words.split(",", -1)) {
      ROLES.put(word, role);
    }
  }
}
