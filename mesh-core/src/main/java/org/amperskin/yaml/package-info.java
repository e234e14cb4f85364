/**
 * YAML mappings that remember where each value stands, so that every fault is told with line,
 * column and the nearest right word. Recipes and job files are both read with it.
 *
 * <p>May import: {@code units}. Read {@link org.amperskin.yaml.YamlMap} first.
 */
package org.amperskin.yaml;
