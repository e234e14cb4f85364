/** Classes that break the house's rules on purpose, to show that the rules can fail. */
package org.amperskin.floorfault;
