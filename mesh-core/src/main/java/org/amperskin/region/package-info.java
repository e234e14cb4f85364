/**
 * Placing artwork on the skin, splitting the mesh along it, and the regions that result.
 *
 * <p>May import: {@code skin}, {@code pattern}.
 */
package org.amperskin.region;
