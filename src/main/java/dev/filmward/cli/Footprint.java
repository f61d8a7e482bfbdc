package dev.filmward.cli;

import com.sun.management.HotSpotDiagnosticMXBean;
import java.lang.management.ManagementFactory;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Asks the virtual machine to give memory back that a server does not need: a server mostly waits,
 * and on a large machine the default is to keep whatever the heap once grew to. Options that
 * somebody set on the command line stay as they are; a virtual machine without these goes without.
 */
final class Footprint {
  private static final Logger LOG = LoggerFactory.getLogger(Footprint.class);

  private Footprint() {}

  static void modest() {
    HotSpotDiagnosticMXBean machine =
        ManagementFactory.getPlatformMXBean(HotSpotDiagnosticMXBean.class);
    set(machine, "MinHeapFreeRatio", "10");
    set(machine, "MaxHeapFreeRatio", "30");
    set(machine, "G1PeriodicGCInterval", "15000");
  }

  private static void set(@Nullable HotSpotDiagnosticMXBean machine, String option, String value) {
    try {
      if (machine != null && isDefault(machine, option)) {
        machine.setVMOption(option, value);
      }
    } catch (IllegalArgumentException e) {
      LOG.debug("This virtual machine has no {}", option, e);
    }
  }

  private static boolean isDefault(HotSpotDiagnosticMXBean machine, String option) {
    return switch (machine.getVMOption(option).getOrigin()) {
      case DEFAULT, ERGONOMIC -> true;
      default -> false;
    };
  }
}
