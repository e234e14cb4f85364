package org.amperskin.io.threemf;

/**
 * An item of the build or a component: an object and where it goes.
 *
 * @param path absolute name of the part that has the object, null for the same part
 * @param objectId the object
 * @param transform where it goes
 * @param line line of the part that says so
 */
record Reference(String path, int objectId, Transform transform, long line) {}
