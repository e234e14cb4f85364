package org.amperskin.plating;

/** What may be promised about the thickness a solution deposits. */
public enum Claim {
  /** Thickness follows from charge. */
  FARADAY,
  /** A thin decorative film: thickness only up to the cap, in a wide band. */
  CAPPED,
  /** No figure at all without a coupon. */
  COUPON;

  /** The word used in recipe files. */
  public String key() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
