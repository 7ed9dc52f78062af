package org.climbwatch.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.ArgumentMatchers.anyString;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.times;
import static org.mockito.Mockito.verify;
import static org.mockito.Mockito.verifyNoInteractions;
import static org.mockito.Mockito.verifyNoMoreInteractions;

import org.climbwatch.reading.Fault;
import org.junit.jupiter.api.Test;
import org.mockito.ArgumentCaptor;
import org.slf4j.Logger;

class OutageLogTest {
  private static final long SECOND = 1_000_000_000L;

  // the logging front end is not ours to own; its back end writes to the console only
  private final Logger logger = mock(Logger.class);
  private final OutageLog outages = new OutageLog(logger, "top");

  @Test
  void theNormalHourIsSilent() {
    for (long second = 0; second < 3600; second++) {
      outages.heard(second * SECOND);
    }

    verifyNoInteractions(logger);
  }

  @Test
  void anOutageIsOneLineAtItsStartAndOneAtItsEndWithItsLength() {
    for (long second = 10; second < 47; second++) {
      outages.notHeard(Fault.DEVICE_GONE, "/dev/x is not there", second * SECOND);
    }
    outages.heard(47 * SECOND);
    outages.heard(48 * SECOND);

    verify(logger).warn(anyString(), any(Object.class), any(Object.class));
    ArgumentCaptor<Object> probe = ArgumentCaptor.forClass(Object.class);
    ArgumentCaptor<Object> seconds = ArgumentCaptor.forClass(Object.class);
    verify(logger).info(anyString(), probe.capture(), seconds.capture());
    assertThat(probe.getValue()).isEqualTo("top");
    assertThat(seconds.getValue()).isEqualTo(37L);
    verifyNoMoreInteractions(logger);
  }

  @Test
  void anotherFaultInTheSameOutageIsAnotherLineButTheLengthIsThatOfTheWhole() {
    outages.notHeard(Fault.NO_ANSWER, "x", 0);
    outages.notHeard(Fault.DEVICE_GONE, "x", 5 * SECOND);
    outages.heard(20 * SECOND);

    verify(logger, times(2)).warn(anyString(), any(Object.class), any(Object.class));
    ArgumentCaptor<Object> seconds = ArgumentCaptor.forClass(Object.class);
    verify(logger).info(anyString(), any(Object.class), seconds.capture());
    assertThat(seconds.getValue()).isEqualTo(20L);
  }
}
