package steadypull.adapter.diagnostic;

/** How sure a control unit is of a trouble code; each status has a service of SAE J1979. */
public enum CodeStatus {
  /** Service 03: the fault is confirmed and stored. */
  STORED(0x03),
  /** Service 07: seen in this or the last driving cycle, not confirmed yet. */
  PENDING(0x07),
  /** Service 0A: stays until the control unit itself finds the fault gone. CAN only. */
  PERMANENT(0x0A);

  private final int service;

  CodeStatus(int service) {
    this.service = service;
  }

  /** The number of the service that asks for these codes. */
  public int service() {
    return service;
  }

  /** The whole request, hex. */
  public String request() {
    return "%02X".formatted(service);
  }
}
