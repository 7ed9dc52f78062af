/**
 * Where readings come from. {@link org.climbwatch.source.Source} is what the sampler asks; each
 * package below is one kind of outside thing: a serial line, an SPI bus, a recording, the kiln
 * model.
 */
package org.climbwatch.source;
