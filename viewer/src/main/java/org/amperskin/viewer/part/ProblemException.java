package org.amperskin.viewer.part;

/** A file that cannot be shown: what happened, where, and what to do about it. */
public final class ProblemException extends Exception {
  private static final long serialVersionUID = 1;

  private final String where;
  private final String whatToDo;

  /**
   * Tells a problem.
   *
   * @param what one sentence, such as "The file ends in the middle of triangle 12 of 400."
   * @param where file and line or byte offset
   * @param whatToDo one sentence that helps
   */
  public ProblemException(String what, String where, String whatToDo) {
    super(what);
    this.where = where;
    this.whatToDo = whatToDo;
  }

  /** Tells a problem and keeps its cause. */
  public ProblemException(String what, String where, String whatToDo, Throwable cause) {
    super(what, cause);
    this.where = where;
    this.whatToDo = whatToDo;
  }

  /** What happened. */
  public String what() {
    return getMessage();
  }

  /** File and line or byte offset. */
  public String where() {
    return where;
  }

  /** What helps. */
  public String whatToDo() {
    return whatToDo;
  }
}
