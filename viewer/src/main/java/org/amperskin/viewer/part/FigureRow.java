package org.amperskin.viewer.part;

/**
 * One number of a list, ready to show.
 *
 * @param label what it is
 * @param value the number as text, digits only where possible so that columns align
 * @param unit its unit, may be empty
 */
public record FigureRow(String label, String value, String unit) {}
