/**
 * The terminal: one class a verb, each reads its options, asks {@code mesh-core} and prints.
 *
 * <p>May import: everything of {@code mesh-core}; nothing of the viewer. Read {@link
 * org.amperskin.cli.Main} first.
 */
package org.amperskin.cli;
