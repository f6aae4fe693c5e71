package steadypull.drive;

import steadypull.adapter.diagnostic.ParameterTable;

/** The standard signals that this program can read, for rooms that do not know the adapter. */
public final class SignalTable {
  private SignalTable() {}

  /**
   * Whether a signal can be read from a vehicle that offers it.
   *
   * @param signalKey such as {@code 01.77.1}
   */
  public static boolean knows(String signalKey) {
    return ParameterTable.all().stream()
        .flatMap(parameter -> parameter.signals().stream())
        .anyMatch(signal -> signal.key().equals(signalKey));
  }
}
