package cistern.clinic.launch;

/** Where a web application usually listens. */
final class Ports {

  /** Registered with IANA as http-alt. */
  static final int USUAL = 8080;

  /** Only this machine. */
  static final String HERE = "127.0.0.1";

  private Ports() {}
}
