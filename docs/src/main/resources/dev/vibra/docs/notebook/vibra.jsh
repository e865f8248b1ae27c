// Start-up file of Vibra for JShell, JDK 17 or newer. Written by
//
//     java -jar vibra-survey.jar --jshell > vibra.jsh
//
// and used as
//
//     jshell --class-path vibra-survey.jar --startup DEFAULT --startup vibra.jsh
//
// Then, for example:
//
//     demo()                                       the demonstration machine and the names of its recordings
//     var a = demo("fe-h")                         one of them; your own: Recordings.read(Path.of("a.wav"), Unit.G)
//     var v = Spectrum.of(a).velocity()
//     v.peaks(3)
//     plot(v, 10, 400)                             10 Hz to 400 Hz; the answer says where the picture lies
//     plot(a)                                      plot(a, 0.5, 0.7) shows 0.5 s to 0.7 s
//     save(plot(a), "fan.png")                     a picture that is to stay
//     Survey.of(demo().machine(), demo().recordings())
//
// JShell cuts the answer to "var x = ..." at 80 characters; the name alone, "x", shows more of it. These lines, typed
// into a session, show all of it:
//
//     /set mode vibra normal -command
//     /set truncation vibra 20000
//     /set feedback vibra
//
// With them, "/set mode vibra -retain" and "/set feedback -retain vibra" keep that for later sessions.
//
// If a plot ends with a message about the display, start JShell with -R-Djava.awt.headless=true.

// Where things are: each package says in its Javadoc where to start.
import dev.vibra.alarm.*;
import dev.vibra.balance.*;
import dev.vibra.balance.influence.*;
import dev.vibra.balance.phaseless.*;
import dev.vibra.balance.placement.*;
import dev.vibra.balance.reading.*;
import dev.vibra.balance.rotor.*;
import dev.vibra.balance.tolerance.*;
import dev.vibra.balance.uncertainty.*;
import dev.vibra.balance.vector.*;
import dev.vibra.bandmap.*;
import dev.vibra.bearing.*;
import dev.vibra.bearing.kinematics.*;
import dev.vibra.bearing.lines.*;
import dev.vibra.bearing.proportion.*;
import dev.vibra.bearing.rival.*;
import dev.vibra.bearing.synthesis.*;
import dev.vibra.cepstrum.*;
import dev.vibra.channel.*;
import dev.vibra.cyclic.*;
import dev.vibra.descriptor.*;
import dev.vibra.diagnosis.*;
import dev.vibra.envelope.*;
import dev.vibra.evidence.*;
import dev.vibra.fault.*;
import dev.vibra.filter.*;
import dev.vibra.history.*;
import dev.vibra.integration.*;
import dev.vibra.io.*;
import dev.vibra.level.*;
import dev.vibra.lines.*;
import dev.vibra.machine.*;
import dev.vibra.measuring.*;
import dev.vibra.meter.*;
import dev.vibra.octave.*;
import dev.vibra.point.*;
import dev.vibra.quality.*;
import dev.vibra.quantity.*;
import dev.vibra.record.*;
import dev.vibra.rotation.*;
import dev.vibra.score.*;
import dev.vibra.severity.*;
import dev.vibra.signal.*;
import dev.vibra.simulation.*;
import dev.vibra.spectrum.*;
import dev.vibra.speedrun.*;
import dev.vibra.state.*;
import dev.vibra.survey.*;
import dev.vibra.symptom.*;
import dev.vibra.synthesis.*;
import dev.vibra.transfer.*;
import dev.vibra.transform.*;
import dev.vibra.trend.*;
import dev.vibra.uncertainty.*;
import dev.vibra.window.*;

// Instants and durations of recordings and readings.
import java.time.Duration;
import java.time.Instant;

// demo, plot, save.
import dev.vibra.docs.notebook.*;
import static dev.vibra.docs.notebook.Notebook.*;
