<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
 <context>
  <name>Tautline</name>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>Adjust levelled height differences</source>
   <translation>Nivellierte Höhenunterschiede ausgleichen</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>Adjusts levelled height differences as one net by least squares. Benchmarks are held fixed, or take part with their own standard deviation; a free adjustment holds one point only and shows benchmarks that have moved.

Before it, sections levelled twice and loops are added up and compared with a class of levelling, n times the square root of the length in kilometres. After it, w is each line's residual over its standard deviation: beyond 3.29 a blunder is suspected. The smallest blunder that would be found, with a probability of 80 %, tells how well the net checks the line. A line that no other checks has no w. Nothing is left out of the adjustment.

Parts of the net that reach no benchmark get no heights, and are named. Stations get their heights by name: the fields height and sd are those that 'Fit a straight line or plane' looks for. COVARIANCE keeps what the heights share.

Results are for review; field work follows local codes, and a licensed surveyor or engineer decides.</source>
   <translation>Gleicht nivellierte Höhenunterschiede als ein Netz nach der Methode der kleinsten Quadrate aus. Höhenfestpunkte werden festgehalten oder gehen mit ihrer eigenen Standardabweichung ein; eine freie Ausgleichung hält nur einen Punkt fest und zeigt Höhenfestpunkte, die sich bewegt haben.

Zuvor werden doppelt nivellierte Strecken und Schleifen aufsummiert und mit der Grenze einer Klasse verglichen: n mal Wurzel der Länge in Kilometern. Danach ist w für jede Linie die Verbesserung geteilt durch ihre Standardabweichung: Über 3,29 wird ein grober Fehler vermutet. Der kleinste grobe Fehler, der mit einer Wahrscheinlichkeit von 80 % aufgedeckt würde, zeigt, wie gut das Netz die Linie kontrolliert. Eine Linie, die von keiner anderen kontrolliert wird, hat kein w. Aus der Ausgleichung wird nichts weggelassen.

Netzteile ohne Anschluss an einen Höhenfestpunkt erhalten keine Höhen und werden genannt. Stationen erhalten ihre Höhen über den Namen: Die Felder height und sd sind die, die 'Gerade oder Ebene einpassen' sucht. COVARIANCE bewahrt, was den Höhen gemeinsam ist.

Die Ergebnisse dienen der Prüfung; für Arbeiten vor Ort gelten die örtlichen Vorschriften, und es entscheidet eine zugelassene Fachperson für Vermessung oder Ingenieurwesen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>Heights</source>
   <translation>Höhen</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>benchmark</source>
   <translation>Höhenfestpunkt</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>blunder</source>
   <translation>grober Fehler</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>least squares</source>
   <translation>kleinste Quadrate</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>levelling</source>
   <translation>Nivellement</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>loop</source>
   <translation>Schleife</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>misclosure</source>
   <translation>Widerspruch</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>network</source>
   <translation>Netz</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>network adjustment</source>
   <translation>Netzausgleichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>Corrects each line by the latitudes of its ends, which STATIONS or benchmarks that are points must hold. Empty: none.</source>
   <translation>Reduziert jede Linie nach den Breiten ihrer Endpunkte; diese müssen in STATIONS oder in Höhenfestpunkten mit Punktgeometrie stehen. Leer: keine.</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>Adjusted heights</source>
   <translation>Ausgeglichene Höhen</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>A row for each point: adjusted height, standard deviation, and for a benchmark adjusted less given height.</source>
   <translation>Eine Zeile je Punkt: ausgeglichene Höhe, Standardabweichung und bei einem Höhenfestpunkt ausgeglichene minus gegebene Höhe.</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>Adjusted lines</source>
   <translation>Ausgeglichene Linien</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>A row for each line: v is observed less adjusted, w is v over its standard deviation, a blunder is suspected beyond 3.29.</source>
   <translation>Eine Zeile je Linie: v ist beobachtet minus ausgeglichen, w ist v geteilt durch seine Standardabweichung; über 3,29 wird ein grober Fehler vermutet.</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>Misclosures</source>
   <translation>Widersprüche</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>Sections levelled twice and loops with what they add up to, and the limit of the class: 8 mm over 4 km where n is 4.</source>
   <translation>Doppelt nivellierte Strecken und Schleifen mit ihrer Summe und der Grenze der Klasse: 8 mm auf 4 km bei n = 4.</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>Degrees of freedom</source>
   <translation>Freiheitsgrade</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>Variance factor</source>
   <translation>Varianzfaktor</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>Suspected blunders</source>
   <translation>Vermutete grobe Fehler</translation>
  </message>
  <message>
   <location filename="../../algorithms/adjust_levelling.py" />
   <source>Misclosures beyond the limit</source>
   <translation>Widersprüche über der Grenze</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/axes.py" />
   <source>Layer '{}': {}</source>
   <translation>Layer '{}': {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/axes.py" />
   <source>Layer '{}' has two axes named '{}', rows {} and {}; give them different names or choose another AXIS_FIELD.</source>
   <translation>Layer '{}' enthält zwei Achsen namens '{}', Zeilen {} und {}; verschiedene Namen vergeben oder ein anderes AXIS_FIELD wählen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/axes.py" />
   <source>Layer '{}' has no axis.</source>
   <translation>Layer '{}' enthält keine Achse.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/axes.py" />
   <source>Layer '{}', row {}: {}</source>
   <translation>Layer '{}', Zeile {}: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/axes.py" />
   <source>axis '{}' has no geometry.</source>
   <translation>Achse '{}' hat keine Geometrie.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/axes.py" />
   <source>axis '{}' has curved segments; an axis is made of straight legs.</source>
   <translation>Achse '{}' hat gekrümmte Segmente; eine Achse besteht aus geraden Abschnitten.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/axes.py" />
   <source>axis '{}' has an empty part.</source>
   <translation>Achse '{}' hat einen leeren Teil.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/axes.py" />
   <source>Layer '{}', field '{}', row {}: there is no axis '{}'; the axes are {}.</source>
   <translation>Layer '{}', Feld '{}', Zeile {}: Eine Achse '{}' gibt es nicht; vorhandene Achsen: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/cells.py" />
   <source>Layer '{}', field '{}', row {}</source>
   <translation>Layer '{}', Feld '{}', Zeile {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/cells.py" />
   <source>{}: '{}' is not a number.</source>
   <translation>{}: '{}' ist keine Zahl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/cells.py" />
   <source>{}: the value is infinite.</source>
   <translation>{}: Der Wert ist unendlich.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Axis</source>
   <translation>Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Station</source>
   <translation>Station</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Chainage</source>
   <translation>Stationierung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Offset</source>
   <translation>Querabstand</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>As-built height</source>
   <translation>Ist-Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Azimuth</source>
   <translation>Azimut</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation across the axis</source>
   <translation>Standardabweichung quer zur Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Row</source>
   <translation>Zeile</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Reason</source>
   <translation>Grund</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Design height</source>
   <translation>Soll-Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Residual</source>
   <translation>Abweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Adjustment</source>
   <translation>Korrektur</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Design height, no curvature</source>
   <translation>Soll-Höhe ohne Erdkrümmung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Curvature effect</source>
   <translation>Krümmungseinfluss</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Status</source>
   <translation>Status</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral departure</source>
   <translation>Querabweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Side</source>
   <translation>Seite</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Design</source>
   <translation>Entwurf</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Chainage of control A</source>
   <translation>Stationierung Zwangspunkt A</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Height of control A</source>
   <translation>Höhe Zwangspunkt A</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Chainage of control B</source>
   <translation>Stationierung Zwangspunkt B</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Height of control B</source>
   <translation>Höhe Zwangspunkt B</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Slope</source>
   <translation>Neigung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Chainage height</source>
   <translation>Stationierungshöhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Tolerance</source>
   <translation>Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Stations</source>
   <translation>Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>RMS residual</source>
   <translation>RMS-Abweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Greatest residual</source>
   <translation>Größte Abweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Greatest residual at</source>
   <translation>Größte Abweichung bei</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Within tolerance</source>
   <translation>In der Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>High</source>
   <translation>Zu hoch</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Low</source>
   <translation>Zu tief</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>No as-built height</source>
   <translation>Keine Ist-Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Line</source>
   <translation>Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Line from</source>
   <translation>Linie von</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Line to</source>
   <translation>Linie bis</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Tolerance of the line</source>
   <translation>Toleranz der Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Stations judged in line</source>
   <translation>Zur Linie beurteilt</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>RMS lateral departure</source>
   <translation>RMS-Querabweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Greatest lateral departure</source>
   <translation>Größte Querabweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Greatest lateral departure at</source>
   <translation>Größte Querabweichung bei</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Within the line's tolerance</source>
   <translation>In der Linientoleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Left</source>
   <translation>Links</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Right</source>
   <translation>Rechts</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Record of the run</source>
   <translation>Laufprotokoll</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Test value w</source>
   <translation>Testgröße w</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Redundancy</source>
   <translation>Redundanzanteil</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Smallest detectable blunder</source>
   <translation>Kleinster aufdeckbarer Fehler</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Flag</source>
   <translation>Markierung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral test value w</source>
   <translation>Seitliche Testgröße w</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral redundancy</source>
   <translation>Redundanzanteil quer</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Smallest detectable lateral blunder</source>
   <translation>Kleinster aufdeckbarer seitlicher Fehler</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Flag of the line</source>
   <translation>Markierung der Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Latitude of the line's middle</source>
   <translation>Breite der Linienmitte</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Longitude of the line's middle</source>
   <translation>Länge der Linienmitte</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Azimuth of the line</source>
   <translation>Azimut der Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral standard deviation of the line</source>
   <translation>Seitliche Standardabweichung der Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation of its azimuth</source>
   <translation>Standardabweichung ihres Azimuts</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Stations of the line in plan</source>
   <translation>Stationen der Linie im Grundriss</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Suspected blunders in line</source>
   <translation>Vermutete grobe Fehler, Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Set aside in plan</source>
   <translation>Ausgesondert, Grundriss</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Variance factor in plan</source>
   <translation>Varianzfaktor im Grundriss</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Global test in plan</source>
   <translation>Globaltest im Grundriss</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Name</source>
   <translation>Name</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Kind</source>
   <translation>Art</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Axes</source>
   <translation>Achsen</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Latitude of the point</source>
   <translation>Breite des Punktes</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Longitude of the point</source>
   <translation>Länge des Punktes</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Ellipsoidal height of the point</source>
   <translation>Ellipsoidische Höhe des Punktes</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Normal x</source>
   <translation>Normale x</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Normal y</source>
   <translation>Normale y</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Normal z</source>
   <translation>Normale z</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Unit of heights</source>
   <translation>Höheneinheit</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Height system</source>
   <translation>Höhensystem</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Undulation</source>
   <translation>Undulation</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Datum</source>
   <translation>Datum</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Slopes</source>
   <translation>Neigungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation of the height</source>
   <translation>Standardabweichung der Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation of the slope</source>
   <translation>Standardabweichung der Neigung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Set aside</source>
   <translation>Ausgesondert</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Vertical straightness, RMS</source>
   <translation>Geradheit vertikal, RMS</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Vertical straightness, range</source>
   <translation>Geradheit vertikal, Spannweite</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral straightness, RMS</source>
   <translation>Geradheit seitlich, RMS</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral straightness, range</source>
   <translation>Geradheit seitlich, Spannweite</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Combined straightness, RMS</source>
   <translation>Geradheit kombiniert, RMS</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Combined straightness, greatest</source>
   <translation>Geradheit kombiniert, größte</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Vertical minimum zone</source>
   <translation>Minimumzone vertikal</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral minimum zone</source>
   <translation>Minimumzone seitlich</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Minimum zone, cylinder</source>
   <translation>Minimumzone, Zylinder</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Global test</source>
   <translation>Globaltest</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Tangent point, latitude</source>
   <translation>Berührpunkt, Breite</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Tangent point, longitude</source>
   <translation>Berührpunkt, Länge</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Tangent point, chainage</source>
   <translation>Berührpunkt, Station</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Tangent point, standard deviation</source>
   <translation>Berührpunkt, Standardabweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Tangent point</source>
   <translation>Berührpunkt</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Level point, latitude</source>
   <translation>Horizontalpunkt, Breite</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Level point, longitude</source>
   <translation>Horizontalpunkt, Länge</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Level point, chainage</source>
   <translation>Horizontalpunkt, Station</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Level point, standard deviation</source>
   <translation>Horizontalpunkt, Standardabweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Level point</source>
   <translation>Horizontalpunkt</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>First day of survey</source>
   <translation>Erster Messtag</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Last day of survey</source>
   <translation>Letzter Messtag</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Longer semi-axis</source>
   <translation>Große Halbachse</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Shorter semi-axis</source>
   <translation>Kleine Halbachse</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Exaggeration</source>
   <translation>Überhöhung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Bar on the ground (m)</source>
   <translation>Balken in der Natur (m)</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Cut</source>
   <translation>Gekürzt</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Part</source>
   <translation>Teil</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Height in the strip</source>
   <translation>Höhe im Streifen</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Label</source>
   <translation>Beschriftung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Length</source>
   <translation>Länge</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation of the curvature factor</source>
   <translation>Standardabweichung des Krümmungsfaktors</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>The geoid's share</source>
   <translation>Anteil des Geoids</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Curvature factor, from</source>
   <translation>Krümmungsfaktor, von</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Curvature factor, to</source>
   <translation>Krümmungsfaktor, bis</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Radius of the Earth</source>
   <translation>Erdradius</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Implied radius</source>
   <translation>Abgeleiteter Radius</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Implied radius, from</source>
   <translation>Abgeleiteter Radius, von</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Implied radius, to</source>
   <translation>Abgeleiteter Radius, bis</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>In words</source>
   <translation>In Worten</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>RMS, level</source>
   <translation>RMS, niveaugleich</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>RMS, grade</source>
   <translation>RMS, Neigung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>RMS, straight</source>
   <translation>RMS, gerade</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>RMS, 8-inch rule</source>
   <translation>RMS, 8-Zoll-Regel</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>RMS, sphere</source>
   <translation>RMS, Kugel</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>RMS, free</source>
   <translation>RMS, frei</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Chi squared, level</source>
   <translation>Chi-Quadrat, niveaugleich</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Chi squared, grade</source>
   <translation>Chi-Quadrat, Neigung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Chi squared, straight</source>
   <translation>Chi-Quadrat, gerade</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Chi squared, 8-inch rule</source>
   <translation>Chi-Quadrat, 8-Zoll-Regel</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Chi squared, sphere</source>
   <translation>Chi-Quadrat, Kugel</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Chi squared, free</source>
   <translation>Chi-Quadrat, frei</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Movement</source>
   <translation>Bewegung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Action</source>
   <translation>Maßnahme</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Predicted residual</source>
   <translation>Erwartete Abweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Predicted status</source>
   <translation>Erwarteter Status</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral movement</source>
   <translation>Seitliche Bewegung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral action</source>
   <translation>Seitliche Maßnahme</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Predicted lateral departure</source>
   <translation>Erwartete Querabweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Predicted side</source>
   <translation>Erwartete Seite</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Reason, lateral</source>
   <translation>Grund, seitlich</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Survey</source>
   <translation>Messung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Surveys</source>
   <translation>Messungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Latest survey</source>
   <translation>Letzte Messung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Height in the first survey</source>
   <translation>Höhe in der ersten Messung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Height in the later survey</source>
   <translation>Höhe in der späteren Messung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Change</source>
   <translation>Änderung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation of the change</source>
   <translation>Standardabweichung der Änderung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Change over its standard deviation</source>
   <translation>Änderung/Standardabweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Verdict</source>
   <translation>Urteil</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Rate per year</source>
   <translation>Rate pro Jahr</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation of the rate</source>
   <translation>Standardabweichung der Rate</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Change common to the axis</source>
   <translation>Gemeinsame Änderung der Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Differential movement</source>
   <translation>Verformung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation of the differential movement</source>
   <translation>Standardabweichung der Verformung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Verdict on the differential movement</source>
   <translation>Urteil zur Verformung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Date</source>
   <translation>Datum</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Years</source>
   <translation>Jahre</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Stable</source>
   <translation>Stabil</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Chi squared</source>
   <translation>Chi-Quadrat</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Limit of chi squared</source>
   <translation>Grenze für Chi-Quadrat</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Common shift</source>
   <translation>Gemeinsame Verschiebung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation of the shift</source>
   <translation>Standardabw. der Verschiebung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Verdict on the shift</source>
   <translation>Urteil zur Verschiebung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Verdict on the tilt</source>
   <translation>Urteil zur Kippung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Common tilt</source>
   <translation>Gemeinsame Kippung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation of the tilt</source>
   <translation>Standardabweichung der Kippung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Risen</source>
   <translation>Gehoben</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Settled</source>
   <translation>Gesetzt</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Possible</source>
   <translation>Möglich</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Stations with differential movement</source>
   <translation>Stationen mit Verformung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral position in the first survey</source>
   <translation>Seitliche Lage in der ersten Messung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral position in the later survey</source>
   <translation>Seitliche Lage in der späteren Messung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral change</source>
   <translation>Seitliche Änderung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation of the lateral change</source>
   <translation>Standardabweichung der seitlichen Änderung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral change over its standard deviation</source>
   <translation>Seitliche Änderung/Standardabweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Verdict on the lateral change</source>
   <translation>Urteil zur seitlichen Änderung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral rate per year</source>
   <translation>Seitliche Rate pro Jahr</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation of the lateral rate</source>
   <translation>Standardabweichung der seitlichen Rate</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral change common to the axis</source>
   <translation>Gemeinsame seitliche Änderung der Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral differential movement</source>
   <translation>Seitliche Verformung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation of the lateral differential movement</source>
   <translation>Standardabweichung der seitlichen Verformung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Verdict on the lateral differential movement</source>
   <translation>Urteil zur seitlichen Verformung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Laterally stable</source>
   <translation>Seitlich stabil</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Common lateral shift</source>
   <translation>Gemeinsame Querverschiebung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation of the lateral shift</source>
   <translation>Standardabweichung der Querverschiebung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Common rotation in plan</source>
   <translation>Drehung im Grundriss</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation of the rotation</source>
   <translation>Standardabweichung der Drehung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Possible, lateral</source>
   <translation>Möglich, seitlich</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Stations with lateral differential movement</source>
   <translation>Stationen mit seitlicher Verformung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>From</source>
   <translation>Von</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>To</source>
   <translation>Nach</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Height difference</source>
   <translation>Höhenunterschied</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation</source>
   <translation>Standardabweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Setups</source>
   <translation>Aufstellungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Curvature and refraction</source>
   <translation>Krümmung und Refraktion</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Collimation</source>
   <translation>Ziellinienfehler</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Imbalance</source>
   <translation>Zielweitendifferenz</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Refraction coefficient k</source>
   <translation>Refraktionskoeffizient k</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Solved k</source>
   <translation>Bestimmtes k</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Standard deviation of k</source>
   <translation>Standardabweichung von k</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Day</source>
   <translation>Tag</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Rows</source>
   <translation>Zeilen</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Point</source>
   <translation>Punkt</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Role</source>
   <translation>Rolle</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Given height</source>
   <translation>Gegebene Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Adjusted minus given</source>
   <translation>Ausgeglichen minus gegeben</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Gravity correction</source>
   <translation>Schwerereduktion</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Adjusted difference</source>
   <translation>Ausgeglichener Unterschied</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Observed minus adjusted</source>
   <translation>Beobachtet minus ausgeglichen</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Number</source>
   <translation>Nummer</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Route</source>
   <translation>Weg</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Misclosure</source>
   <translation>Widerspruch</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Limit</source>
   <translation>Grenze</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Covariance</source>
   <translation>Kovarianz</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Change of the undulation</source>
   <translation>Änderung der Undulation</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Bending of the geoid</source>
   <translation>Geoidkrümmung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Ellipsoidal height</source>
   <translation>Ellipsoidische Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Orthometric height</source>
   <translation>Orthometrische Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Curvature factor</source>
   <translation>Krümmungsfaktor</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Adjusted height</source>
   <translation>Ausgeglichene Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>RMS, shift removed</source>
   <translation>RMS ohne Verschiebung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Stations compared in line</source>
   <translation>Zur Linie verglichene Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Lateral RMS, shift removed</source>
   <translation>Seitlicher RMS ohne Verschiebung</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Moved right</source>
   <translation>Nach rechts</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Moved left</source>
   <translation>Nach links</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/fields.py" />
   <source>Height</source>
   <translation>Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/geometries.py" />
   <source>The drawing reaches beyond what '{}' can show; give the stations another coordinate reference system.</source>
   <translation>Die Zeichnung reicht über das hinaus, was '{}' darstellen kann; den Stationen ein anderes Koordinatenbezugssystem geben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/geopackage_tables.py" />
   <source>{} is read-only</source>
   <translation>{} ist schreibgeschützt</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/geopackage_tables.py" />
   <source>{} is not a GeoPackage, or is damaged</source>
   <translation>{} ist kein GeoPackage oder beschädigt</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/geopackage_tables.py" />
   <source>{} is in use by another program</source>
   <translation>{} wird von einem anderen Programm benutzt</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/geopackage_tables.py" />
   <source>the table '{}' cannot be removed</source>
   <translation>die Tabelle '{}' kann nicht entfernt werden</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/geopackage_tables.py" />
   <source>the table '{}' no longer exists</source>
   <translation>die Tabelle '{}' existiert nicht mehr</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/geopackage_tables.py" />
   <source>the table '{}' cannot be given its name</source>
   <translation>die Tabelle '{}' kann ihren Namen nicht erhalten</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/height_column.py" />
   <source>field '{}'</source>
   <translation>Feld '{}'</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/height_column.py" />
   <source>the points' Z</source>
   <translation>Z der Punkte</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/height_column.py" />
   <source>none</source>
   <translation>keine</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/height_column.py" />
   <source>Layer '{}' has no field 'height' and its points have no Z; choose the field with the heights (HEIGHT_FIELD) among {}.</source>
   <translation>Layer '{}' hat kein Feld 'height', und seine Punkte haben kein Z; das Feld mit den Höhen (HEIGHT_FIELD) wählen. Vorhanden: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/height_column.py" />
   <source>no field</source>
   <translation>kein Feld</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/input_fields.py" />
   <source>Layer '{}' has the fields {}, which differ by case only; name the one that is meant ({}).</source>
   <translation>Layer '{}' hat die Felder {}, die sich nur in der Groß- und Kleinschreibung unterscheiden; das gemeinte angeben ({}).</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/input_fields.py" />
   <source>Layer '{}' has no field '{}' ({}); it has {}.</source>
   <translation>Layer '{}' hat kein Feld '{}' ({}); vorhanden: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/input_fields.py" />
   <source>Layer '{}' has the fields {}, and each may be the {}; name the one that is meant ({}).</source>
   <translation>Layer '{}': Die Felder {} kommen alle in Frage als {}; das gemeinte angeben ({}).</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/output_places.py" />
   <source>{} is a path with a control character in it; give another.</source>
   <translation>{} ist ein Pfad mit einem Steuerzeichen; einen anderen angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/output_places.py" />
   <source>{} is the folder {}; give the name of a file in it.</source>
   <translation>{} ist der Ordner {}; den Namen einer Datei darin angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/output_places.py" />
   <source>{} cannot be written: there is no folder {}.</source>
   <translation>{} kann nicht geschrieben werden: Der Ordner {} fehlt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/output_places.py" />
   <source>{} is {}, where decisions are kept; no run writes there. Choose another name.</source>
   <translation>{} ist {}; dort werden Entscheidungen aufbewahrt, und kein Lauf schreibt dorthin. Einen anderen Namen wählen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/output_places.py" />
   <source>{} is '{}', where layers are kept; a document goes into a file.</source>
   <translation>{} ist '{}'; dort liegen Layer, ein Dokument gehört in eine Datei.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/output_places.py" />
   <source>{} ends in '{}', as a layer's file does; a file that ends in {} is written here.</source>
   <translation>{} endet auf '{}' wie die Datei eines Layers; hier wird eine Datei mit der Endung {} geschrieben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/output_rows.py" />
   <source>The output {} could not be written ({}). Is the disk full or read-only?</source>
   <translation>Die Ausgabe {} konnte nicht geschrieben werden ({}). Ist der Datenträger voll oder schreibgeschützt?</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/output_rows.py" />
   <source>Layer '{}' changed while it was read; run again.</source>
   <translation>Layer '{}' wurde während des Lesens geändert; erneut ausführen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/output_stage.py" />
   <source>The output {} cannot be written to {}: {}.</source>
   <translation>Die Ausgabe {} kann nicht nach {} geschrieben werden: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/output_stage.py" />
   <source>The run failed, and its unfinished table '{}' is still in {}: {}; the next run removes it.</source>
   <translation>Der Lauf ist fehlgeschlagen, und seine unfertige Tabelle '{}' liegt noch in {}: {}; der nächste Lauf entfernt sie.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/output_stage.py" />
   <source>An earlier run was stopped before its outputs in {} were complete; they have been completed: {}.</source>
   <translation>Ein früherer Lauf wurde abgebrochen, bevor seine Ausgaben in {} vollständig waren; sie wurden vervollständigt: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/output_stage.py" />
   <source>What an earlier run that was stopped left unfinished in {} was removed.</source>
   <translation>Unfertige Reste eines abgebrochenen früheren Laufs in {} wurden entfernt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/points.py" />
   <source>Layer '{}' has no stations.</source>
   <translation>Layer '{}' enthält keine Stationen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/points.py" />
   <source>Layer '{}', row {} has coordinates that are not numbers.</source>
   <translation>Layer '{}', Zeile {}: Die Koordinaten sind keine Zahlen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/points.py" />
   <source>Layer '{}', row {}: latitude {}, longitude {} is not a place on Earth.</source>
   <translation>Layer '{}', Zeile {}: Breite {}, Länge {} ist kein Ort auf der Erde.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/rasters.py" />
   <source>The geoid raster '{}' cannot be read.</source>
   <translation>Das Geoidraster '{}' kann nicht gelesen werden.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/rasters.py" />
   <source>The geoid raster '{}' is not in latitude and longitude.</source>
   <translation>Das Geoidraster '{}' liegt nicht in geographischer Breite und Länge vor.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/reference_systems.py" />
   <source>Layer '{}' has no coordinate reference system; set it first.</source>
   <translation>Layer '{}' hat kein Koordinatenbezugssystem; zuerst festlegen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/references.py" />
   <source>Layer '{}' is not a reference layer: it lacks the field {}.</source>
   <translation>Layer '{}' ist kein Bezugslayer: Es fehlt das Feld {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/references.py" />
   <source>Layer '{}', row {}: the plane is not complete.</source>
   <translation>Layer '{}', Zeile {}: Die Ebene ist unvollständig.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/references.py" />
   <source>Layer '{}' has no reference.</source>
   <translation>Layer '{}' enthält keinen Bezug.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/tables.py" />
   <source>points</source>
   <translation>Punkte</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/tables.py" />
   <source>lines</source>
   <translation>Linien</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/tables.py" />
   <source>polygons</source>
   <translation>Polygone</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/tables.py" />
   <source>no geometry</source>
   <translation>keine Geometrie</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/tables.py" />
   <source>Layer '{}' has {}, but {} are expected here.</source>
   <translation>Layer '{}' enthält {}, erwartet werden hier aber {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/tables.py" />
   <source>an unknown geometry</source>
   <translation>eine unbekannte Geometrie</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/tables.py" />
   <source>Layer '{}', row {} (feature {}) has no geometry.</source>
   <translation>Layer '{}', Zeile {} (Objekt {}) hat keine Geometrie.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/tables.py" />
   <source>Layer '{}', row {} has {} points; one is expected.</source>
   <translation>Layer '{}', Zeile {}: {} Punkte; erwartet wird nur einer.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/tables.py" />
   <source>Layer '{}', row {}: the point's Z is infinite.</source>
   <translation>Layer '{}', Zeile {}: Das Z des Punktes ist unendlich.</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/written_check.py" />
   <source>The output {} is not complete: {} of {} rows arrived. Is the disk full?</source>
   <translation>Die Ausgabe {} ist unvollständig: {} von {} Zeilen sind angekommen. Ist der Datenträger voll?</translation>
  </message>
  <message>
   <location filename="../../algorithms/boundary/written_check.py" />
   <source>{} has no spatial index; make one, or the map draws it slowly.</source>
   <translation>{} hat keinen räumlichen Index; einen anlegen, sonst zeichnet die Karte langsam.</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Compare surveys</source>
   <translation>Messungen vergleichen</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Compares surveys of one structure with the earliest of them: change of each station, its standard deviation, whether it is significant, and the rate per year from a weighted line through all surveys. Positive is risen.

Stations are matched by axis and chainage or by name. A change beyond 3.29 standard deviations has risen or settled (Baarda's limit for many stations); between 1.96 and 3.29 it is possible (95 % for a single station). What all stations of an axis share, from a benchmark or the whole structure, is separated as a common shift, with a tilt if asked for; the rest is differential movement. The shift comes from the stations that have not moved among themselves.

Each survey has its own accuracy: of a height by itself (SIGMA), of its levelling (SIGMA_KM), or a covariance from its adjustment. Levelling alone looks like a shift and a tilt: both are judged where SIGMA_KM or a covariance of both surveys is known. Surveys are taken as independent of each other. Intervals are 95 %.

With LINE the line in plan is compared by the same rules: how far each station moved left or right, what all share, and the lateral differential movement. Common shift and rotation are then given, not judged.

Stations of one survey only are listed in a table. Results are for review; a licensed surveyor or engineer decides.</source>
   <translation>Vergleicht Messungen eines Bauwerks mit der frühesten: Änderung jeder Station, deren Standardabweichung, ob sie signifikant ist, und die Rate pro Jahr aus einer gewichteten Geraden durch alle Messungen. Positiv bedeutet gehoben.

Stationen werden nach Achse und Stationierung oder nach dem Namen zugeordnet. Bei einer Änderung über 3,29 Standardabweichungen hat sich die Station gehoben oder gesetzt (Grenze nach Baarda für viele Stationen); zwischen 1,96 und 3,29 ist das möglich (95 % für eine einzelne Station). Was allen Stationen einer Achse gemeinsam ist, durch einen Höhenfestpunkt oder das ganze Bauwerk, wird als gemeinsame Verschiebung abgetrennt, auf Wunsch mit einer Kippung; der Rest ist Verformung. Die Verschiebung stammt aus den Stationen, die sich untereinander nicht bewegt haben.

Jede Messung hat ihre eigene Genauigkeit: einer Höhe für sich (SIGMA), ihres Nivellements (SIGMA_KM) oder als Kovarianz aus ihrer Ausgleichung. Das Nivellement allein sieht wie Verschiebung und Kippung aus: Beide werden beurteilt, wo SIGMA_KM oder eine Kovarianz beider Messungen bekannt ist. Die Messungen gelten als voneinander unabhängig. Intervalle gelten für 95 %.

Mit LINE wird die Linie im Grundriss nach denselben Regeln verglichen: wie weit sich jede Station nach links oder rechts bewegt hat, was allen gemeinsam ist und die seitliche Verformung. Gemeinsame Verschiebung und Drehung werden dann angegeben, nicht beurteilt.

Stationen nur einer Messung stehen in einer Tabelle. Die Ergebnisse dienen der Prüfung; es entscheidet eine zugelassene Fachperson für Vermessung oder Ingenieurwesen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Review</source>
   <translation>Prüfung</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>change</source>
   <translation>Änderung</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>deformation</source>
   <translation>Deformation</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>epoch</source>
   <translation>Epoche</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>monitoring</source>
   <translation>Überwachung</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>rate</source>
   <translation>Rate</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>settlement</source>
   <translation>Setzung</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>survey</source>
   <translation>Messung</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Compared stations</source>
   <translation>Verglichene Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>A row for each station with its change from the first to the latest survey that has it; -0.0054 in metres has settled by 5.4 mm.</source>
   <translation>Eine Zeile je Station mit ihrer Änderung von der ersten bis zur letzten Messung, die sie enthält; -0,0054 in Metern bedeutet 5,4 mm gesetzt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Each axis and survey</source>
   <translation>Jede Achse und Messung</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>A row for each axis and later survey: common shift and tilt, greatest change, numbers of stations risen and settled.</source>
   <translation>Eine Zeile je Achse und spätere Messung: gemeinsame Verschiebung und Kippung, größte Änderung, Anzahl der gehobenen und gesetzten Stationen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Every change</source>
   <translation>Jede Änderung</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>A row for each station and later survey: with 3 surveys two rows a station.</source>
   <translation>Eine Zeile je Station und spätere Messung: bei 3 Messungen zwei Zeilen je Station.</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Stations of one survey only</source>
   <translation>Stationen nur einer Messung</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Stations that only one survey has, or has no height for, with the reason.</source>
   <translation>Stationen, die nur in einer Messung vorkommen oder dort keine Höhe haben, mit dem Grund.</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Comparison to print</source>
   <translation>Vergleich zum Drucken</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>A page with verdicts, chart and tables.</source>
   <translation>Eine Seite mit Urteilen, Diagramm und Tabellen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>HTML files (*.html)</source>
   <translation>HTML-Dateien (*.html)</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Chart</source>
   <translation>Diagramm</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Chainage against change, a line for each survey with its intervals.</source>
   <translation>Änderung über der Stationierung, eine Linie je Messung mit ihren Intervallen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>PNG files (*.png);;SVG files (*.svg)</source>
   <translation>PNG-Dateien (*.png);;SVG-Dateien (*.svg)</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Stations compared</source>
   <translation>Verglichene Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Stations risen or settled</source>
   <translation>Gehobene oder gesetzte Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Possible changes</source>
   <translation>Mögliche Änderungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Readings not compared</source>
   <translation>Nicht verglichene Messwerte</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Greatest change</source>
   <translation>Größte Änderung</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Stations moved left or right</source>
   <translation>Nach links oder rechts bewegt</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Possible lateral changes</source>
   <translation>Mögliche seitliche Änderungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/compare_surveys.py" />
   <source>Greatest lateral change</source>
   <translation>Größte seitliche Änderung</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/changes.py" />
   <source>Layer '{}', row {}: there is no chainage to match by.</source>
   <translation>Layer '{}', Zeile {}: Zum Zuordnen fehlt die Stationierung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/changes.py" />
   <source>No station of layer '{}' is found in layer '{}'; check axis, chainage and the matching tolerance, or match by name.</source>
   <translation>Keine Station des Layers '{}' findet sich in Layer '{}'; Achse, Stationierung und Zuordnungstoleranz prüfen oder nach dem Namen zuordnen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/changes.py" />
   <source>no height in this survey</source>
   <translation>keine Höhe in dieser Messung</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/changes.py" />
   <source>not in survey {}</source>
   <translation>nicht in Messung {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/changes.py" />
   <source>not in the first survey, {}</source>
   <translation>nicht in der ersten Messung, {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/changes.py" />
   <source>Layer '{}': TILT needs the chainage of every station.</source>
   <translation>Layer '{}': TILT braucht die Stationierung jeder Station.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/chart.py" />
   <source>The chart needs matplotlib in QGIS's own Python; install it (python3-matplotlib on Debian and Ubuntu).</source>
   <translation>Das Diagramm braucht matplotlib im Python von QGIS; installieren (python3-matplotlib unter Debian und Ubuntu).</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/chart.py" />
   <source>{} against {}</source>
   <translation>{} gegen {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/chart.py" />
   <source>differential movement, common shift and tilt removed</source>
   <translation>Verformung ohne gemeinsame Verschiebung und Kippung</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/chart.py" />
   <source>differential movement, common shift removed</source>
   <translation>Verformung ohne gemeinsame Verschiebung</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/chart.py" />
   <source>right +</source>
   <translation>rechts +</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/chart.py" />
   <source>up +</source>
   <translation>oben +</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/chart.py" />
   <source>Chainage ({})</source>
   <translation>Stationierung ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/chart.py" />
   <source>lateral change</source>
   <translation>seitliche Änderung</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/chart.py" />
   <source>lateral differential movement, common shift and rotation removed</source>
   <translation>seitliche Verformung ohne gemeinsame Verschiebung und Drehung</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/chart.py" />
   <source>lateral differential movement, common shift removed</source>
   <translation>seitliche Verformung ohne gemeinsame Verschiebung</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/chart.py" />
   <source>{} not drawn.</source>
   <translation>{} nicht gezeichnet.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/chart.py" />
   <source>further axis</source>
   <translation>weitere Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/chart.py" />
   <source>further axes</source>
   <translation>weitere Achsen</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/chart.py" />
   <source>Line chart of change against chainage, a line for each survey; up is positive.</source>
   <translation>Liniendiagramm der Änderung über der Stationierung, eine Linie je Messung; nach oben ist positiv.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/chart.py" />
   <source>Bars or bands are 95 % intervals.</source>
   <translation>Balken oder Bänder sind 95-%-Intervalle.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/chart.py" />
   <source>On a tinted ground the lateral change; right is positive.</source>
   <translation>Auf getöntem Grund die seitliche Änderung; rechts ist positiv.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/comparison_run.py" />
   <source>chainage within {} {}</source>
   <translation>Stationierung innerhalb {} {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/comparison_run.py" />
   <source>The surveys are in different height systems: {}; their difference includes the undulation.</source>
   <translation>Die Messungen liegen in verschiedenen Höhensystemen vor: {}; ihre Differenz enthält die Undulation.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/comparison_run.py" />
   <source>A standard deviation of a lateral position is given, but not used without LINE.</source>
   <translation>Eine Standardabweichung einer seitlichen Lage ist angegeben, wird aber ohne LINE nicht verwendet.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/comparison_run.py" />
   <source>The axis of layer '{}' is not that of layer '{}': lateral changes include the difference between the axes.</source>
   <translation>Die Achse des Layers '{}' ist nicht die des Layers '{}': Seitliche Änderungen enthalten den Unterschied der Achsen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/comparison_run.py" />
   <source>Comparison of surveys: {}</source>
   <translation>Vergleich der Messungen: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/comparison_run.py" />
   <source>CHART ends in '{}'; a chart is written as .png or .svg.</source>
   <translation>CHART endet auf '{}'; ein Diagramm wird als .png oder .svg geschrieben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/line_readings.py" />
   <source>Layer '{}' has no values in a field 'lateral', which LINE 'lateral' compares; run 'Design heights and residuals' with LINE first, or compare the offsets.</source>
   <translation>Layer '{}' hat keine Werte in einem Feld 'lateral', das LINE 'lateral' vergleicht; zuerst 'Soll-Höhen und Abweichungen' mit LINE ausführen oder die Querabstände vergleichen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/line_readings.py" />
   <source>Layer '{}' has no values in a field 'offset', which LINE 'offset' compares; run 'Measure chainage and offset' first.</source>
   <translation>Layer '{}' hat keine Werte in einem Feld 'offset', das LINE 'offset' vergleicht; zuerst 'Stationierung und Querabstand messen' ausführen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/line_readings.py" />
   <source>not known</source>
   <translation>nicht bekannt</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>Axis '{}'</source>
   <translation>Achse '{}'</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>The structure</source>
   <translation>Das Bauwerk</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>{}, line</source>
   <translation>{}, Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>{}, {}: no station in common.</source>
   <translation>{}, {}: keine gemeinsame Station.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>{}, {} against {}: {}, greatest change {} at {}</source>
   <translation>{}, {} gegen {}: {}, größte Änderung {} bei {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>station</source>
   <translation>Station</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>stations</source>
   <translation>Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>{} left, {} right, {} possible</source>
   <translation>{} links, {} rechts, {} möglich</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>{} settled, {} risen, {} possible</source>
   <translation>{} gesetzt, {} gehoben, {} möglich</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>differential movement RMS {}, greatest {} at {}</source>
   <translation>Verformung RMS {}, größte {} bei {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>, {} significant</source>
   <translation>, {} signifikant</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>half of the stations or more stand out, so it cannot be told which part has moved: no common shift is removed</source>
   <translation>mindestens die Hälfte der Stationen hebt sich ab, sodass offenbleibt, welcher Teil sich bewegt hat: Es wird keine gemeinsame Verschiebung abgezogen</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>too few stations to separate a common shift</source>
   <translation>zu wenige Stationen, um eine gemeinsame Verschiebung abzutrennen</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>the surveys do not differ significantly (chi squared {}, limit {} at 95 %)</source>
   <translation>die Messungen unterscheiden sich nicht signifikant (Chi-Quadrat {}, Grenze {} bei 95 %)</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>the surveys differ significantly (chi squared {}, limit {} at 95 %)</source>
   <translation>die Messungen unterscheiden sich signifikant (Chi-Quadrat {}, Grenze {} bei 95 %)</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>{} to {} ({} stations)</source>
   <translation>{} bis {} ({} Stationen)</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>moved against the rest and set aside: {}</source>
   <translation>gegenüber den übrigen bewegt und ausgesondert: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>common shift {}</source>
   <translation>gemeinsame Verschiebung {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>, rotation {}</source>
   <translation>, Drehung {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>, tilt {}</source>
   <translation>, Kippung {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source> (not judged)</source>
   <translation> (nicht beurteilt)</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>{} ± {} {} (95 %, {})</source>
   <translation>{} ± {} {} (95 %, {})</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>No standard deviations were given (SIGMA, or a field 'sd'), so the changes are not judged.</source>
   <translation>Es sind keine Standardabweichungen angegeben (SIGMA oder ein Feld 'sd'), daher werden die Änderungen nicht beurteilt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>Judged by the change over its standard deviation: beyond 3.29 risen or settled (Baarda's limit, one false alarm in a thousand stations), 1.96 to 3.29 possible (95 % for a single station), below that not significant. Without any movement, of {} about {} would be called possible and {} risen or settled by chance.</source>
   <translation>Beurteilt nach der Änderung geteilt durch ihre Standardabweichung: über 3,29 gehoben oder gesetzt (Grenze nach Baarda, ein Fehlalarm auf tausend Stationen), 1,96 bis 3,29 möglich (95 % für eine einzelne Station), darunter nicht signifikant. Ohne jede Bewegung gälten bei {} zufällig etwa {} als möglich und {} als gehoben oder gesetzt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>changes</source>
   <translation>Änderungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>A part that moved by less than about three standard deviations of a change, or that is half an axis or more, cannot be told from the rest.</source>
   <translation>Ein Teil, der sich um weniger als etwa drei Standardabweichungen einer Änderung bewegt hat oder der eine halbe Achse oder mehr umfasst, lässt sich vom Rest nicht unterscheiden.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>The levelling errors that neighbours share are not known of {}: these alone look like a common shift and tilt, so shift and tilt are not judged, nor whether the surveys agree as a whole. Give SIGMA_KM or a covariance.</source>
   <translation>Die Nivellementfehler, die benachbarten Höhen gemeinsam sind, sind nicht bekannt für {}: Sie allein sehen schon wie eine gemeinsame Verschiebung und Kippung aus; daher werden Verschiebung und Kippung nicht beurteilt und auch nicht, ob die Messungen als Ganzes übereinstimmen. SIGMA_KM oder eine Kovarianz angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>Line: lateral departures, in each survey from its own line (a chord or a fit). A lateral movement of the whole is not in them, so changes are not judged; the differential movement, shift and rotation removed, does not depend on the lines.</source>
   <translation>Linie: Querabweichungen, in jeder Messung von ihrer eigenen Linie (Sehne oder ausgleichende Gerade). Eine seitliche Bewegung des Ganzen ist darin nicht enthalten, daher werden Änderungen nicht beurteilt; die Verformung ohne Verschiebung und Drehung hängt nicht von den Linien ab.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>Line: lateral departures from the axis, one line for all surveys.</source>
   <translation>Linie: Querabweichungen von der Achse, eine Linie für alle Messungen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>Line: offsets from the axis, one line for all surveys, so that a movement of the whole shows.</source>
   <translation>Linie: Querabstände von der Achse, eine Linie für alle Messungen, sodass sich eine Bewegung des Ganzen zeigt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>Changes are positive to the right, looking up-chainage.</source>
   <translation>Änderungen sind nach rechts positiv, in Stationierungsrichtung gesehen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>The limits are those of the heights, 3.29 and 1.96 standard deviations.</source>
   <translation>Die Grenzen sind die der Höhen, 3,29 und 1,96 Standardabweichungen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>No standard deviation of a lateral position was given (SIGMA_LINE, or a field 'sd_line'): the line is not judged.</source>
   <translation>Es ist keine Standardabweichung einer seitlichen Lage angegeben (SIGMA_LINE oder ein Feld 'sd_line'): Die Linie wird nicht beurteilt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>The lateral errors that a whole survey shares, from its tie and its orientation, are in no station's standard deviation: a change of all stations to one side may be such an error, so common shift and rotation are given, not judged.</source>
   <translation>Die seitlichen Fehler, die einer ganzen Messung durch Anschluss und Orientierung gemeinsam sind, stecken in keiner Standardabweichung einer Station: Eine Änderung aller Stationen nach einer Seite kann ein solcher Fehler sein; gemeinsame Verschiebung und Drehung werden daher angegeben, aber nicht beurteilt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>Surveys are taken as independent of each other.</source>
   <translation>Die Messungen gelten als voneinander unabhängig.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>Surveys are taken as independent of each other, and heights of one survey where no levelling is known.</source>
   <translation>Die Messungen gelten als voneinander unabhängig, ebenso die Höhen einer Messung, zu der kein Nivellement bekannt ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>A benchmark that moved, or an error that a whole survey shares, shows as common shift, not as differential movement. Intervals and ± are 95 %.</source>
   <translation>Ein bewegter Höhenfestpunkt oder ein Fehler, der einer ganzen Messung gemeinsam ist, zeigt sich als gemeinsame Verschiebung, nicht als Verformung. Intervalle und ± gelten für 95 %.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>Survey {}, {}: {}.</source>
   <translation>Messung {}, {}: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>{}, survey {}: half of the lateral changes are beyond {}; check unit and axis of both surveys.</source>
   <translation>{}, Messung {}: Die Hälfte der seitlichen Änderungen liegt über {}; Einheit und Achse beider Messungen prüfen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>{}, survey {}: half of the changes are beyond {}; check the unit, the height system and the benchmark of both surveys.</source>
   <translation>{}, Messung {}: Die Hälfte der Änderungen liegt über {}; Einheit, Höhensystem und Höhenfestpunkt beider Messungen prüfen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>{}: readings up to {} {} apart along the axis are matched as one station; on its mean slope that alone makes {}.</source>
   <translation>{}: Messwerte, die entlang der Achse bis zu {} {} auseinanderliegen, sind als eine Station zugeordnet; bei der mittleren Neigung macht allein das {} aus.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>Understood: {}, compared with {} ({}); matched by {}.</source>
   <translation>Verstanden: {}, verglichen mit {} ({}); zugeordnet nach: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/messages.py" />
   <source>surveys</source>
   <translation>Messungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>▲ risen</source>
   <translation>▲ gehoben</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>▼ settled</source>
   <translation>▼ gesetzt</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>◀ left</source>
   <translation>◀ links</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>right ▶</source>
   <translation>rechts ▶</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>possible</source>
   <translation>möglich</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>not significant</source>
   <translation>nicht signifikant</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>not judged</source>
   <translation>nicht beurteilt</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Chainage against change since {}; a gap is a station not found.</source>
   <translation>Stationierung gegen Änderung seit {}; eine Lücke ist eine nicht gefundene Station.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>{} not drawn; its numbers are below.</source>
   <translation>{} nicht gezeichnet; die Zahlen stehen unten.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>A change within its interval is not significant, which is no proof that nothing moved. Before anything is concluded, check the benchmarks that both surveys were tied to.</source>
   <translation>Eine Änderung innerhalb ihres Intervalls ist nicht signifikant; das beweist aber nicht, dass sich nichts bewegt hat. Vor jeder Folgerung die Höhenfestpunkte prüfen, an die beide Messungen angeschlossen sind.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Each station, latest survey</source>
   <translation>Jede Station, letzte Messung</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Line: each axis and survey</source>
   <translation>Linie: jede Achse und Messung</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Line: each station, latest survey</source>
   <translation>Linie: jede Station, letzte Messung</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Not compared</source>
   <translation>Nicht verglichen</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>What was compared</source>
   <translation>Was verglichen wurde</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Signs: change is later minus first, + is risen. Differential movement is the change less what all stations of the axis share.</source>
   <translation>Vorzeichen: Änderung ist spätere minus erste Messung, + ist gehoben. Verformung ist die Änderung ohne den Anteil, der allen Stationen der Achse gemeinsam ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>For the line, + is to the right looking up-chainage.</source>
   <translation>Bei der Linie ist + nach rechts, in Stationierungsrichtung gesehen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Common shift ({})</source>
   <translation>Gemeinsame Verschiebung ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Tilt ({})</source>
   <translation>Kippung ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Common lateral shift ({})</source>
   <translation>Gemeinsame Querverschiebung ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Rotation in plan ({})</source>
   <translation>Drehung im Grundriss ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>± 95 % ({})</source>
   <translation>± 95 % ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>RMS, shift removed ({})</source>
   <translation>RMS ohne Verschiebung ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Change ({})</source>
   <translation>Änderung ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Differential movement ({})</source>
   <translation>Verformung ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Lateral change ({})</source>
   <translation>Seitliche Änderung ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Lateral differential movement ({})</source>
   <translation>Seitliche Verformung ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>First ({})</source>
   <translation>Erste ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Latest ({})</source>
   <translation>Letzte ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Rate ({} a year)</source>
   <translation>Rate ({} pro Jahr)</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Axis {}: </source>
   <translation>Achse {}: </translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>{} compared. In bold: moved left or right.</source>
   <translation>{} verglichen. Fett: nach links oder rechts bewegt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>{} compared. In bold: risen or settled.</source>
   <translation>{} verglichen. Fett: gehoben oder gesetzt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Height ({})</source>
   <translation>Höhe ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Survey {}</source>
   <translation>Messung {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>row</source>
   <translation>Zeile</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>rows</source>
   <translation>Zeilen</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Matched by</source>
   <translation>Zugeordnet nach</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Standard deviations, survey {}</source>
   <translation>Standardabweichungen, Messung {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>, with tilt</source>
   <translation>, mit Kippung</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Units</source>
   <translation>Einheiten</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>heights {}, chainages {}</source>
   <translation>Höhen {}, Stationierung {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Made</source>
   <translation>Erstellt</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>{} with Tautline {}, QGIS {}</source>
   <translation>{} mit Tautline {}, QGIS {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>, with rotation</source>
   <translation>, mit Drehung</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/page.py" />
   <source>Standard deviations of lateral positions, survey {}</source>
   <translation>Standardabweichungen seitlicher Lagen, Messung {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Two or more layers of stations of one structure with axis, station, chainage and height, for example outputs of 'Design heights and residuals'. The others are compared with the earliest.</source>
   <translation>Mindestens zwei Layer mit Stationen eines Bauwerks mit Achse, Station, Stationierung und Höhe, zum Beispiel Ausgaben von 'Soll-Höhen und Abweichungen'. Die übrigen Messungen werden mit der frühesten verglichen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Dates</source>
   <translation>Datumsangaben</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>One for each survey in their order, year-month-day, separated by semicolons: 2025-03-11; 2026-03-09. Empty: from each layer's field 'date'.</source>
   <translation>Eines je Messung in ihrer Reihenfolge, Jahr-Monat-Tag, durch Semikolon getrennt: 2025-03-11; 2026-03-09. Leer: aus dem Feld 'date' jedes Layers.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Field with the date</source>
   <translation>Feld mit dem Datum</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>In every survey. Empty: a field 'date'.</source>
   <translation>In jeder Messung. Leer: ein Feld 'date'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Field with the height</source>
   <translation>Feld mit der Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>In every survey. Empty: a field 'height', else design_h plus residual, else the point's Z.</source>
   <translation>In jeder Messung. Leer: ein Feld 'height', sonst design_h plus residual, sonst das Z des Punktes.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Match stations by</source>
   <translation>Stationen zuordnen nach</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>How stations are matched. chainage: the nearest of the same axis within the matching tolerance. name: the same axis and station.</source>
   <translation>Wie Stationen zugeordnet werden. chainage (Stationierung): die nächste derselben Achse innerhalb der Zuordnungstoleranz. name (Name): dieselbe Achse und Station.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Matching tolerance</source>
   <translation>Zuordnungstoleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Greatest distance along the axis, and across where offsets are known, in the unit of chainages, between two readings of one station. Empty: 0.5 m.</source>
   <translation>Größter Abstand zweier Messwerte einer Station entlang der Achse und, wo Querabstände bekannt sind, quer dazu, in der Einheit der Stationierung. Leer: 0,5 m.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Standard deviation of a height</source>
   <translation>Standardabweichung einer Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>One value for all, in the unit of heights: of a height by itself, in addition to what levelling adds. With 0.0008 in metres a change has a standard deviation of 1.1 mm, and is significant beyond 3.7 mm. Empty: from each survey's field 'sd'; without one, changes are given but not judged. With a covariance it is that of setting up on a mark and is added; where it is empty, a point held fixed gets 0.1 mm.</source>
   <translation>Ein Wert für alle, in der Höheneinheit: für eine Höhe allein, zusätzlich zum Anteil des Nivellements. Mit 0.0008 in Metern hat eine Änderung eine Standardabweichung von 1,1 mm und ist ab 3,7 mm signifikant. Leer: aus dem Feld 'sd' jeder Messung; ohne dieses werden Änderungen angegeben, aber nicht beurteilt. Bei einer Kovarianz ist es die des Aufhaltens auf einer Punktmarke und kommt hinzu; bleibt es leer, erhält ein festgehaltener Punkt 0,1 mm.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Standard deviation of a height, for each survey</source>
   <translation>Standardabweichung einer Höhe, je Messung</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>A number for each of the surveys in their order, as in DATES, separated by semicolons: 0.001; 0.0007. Left empty between semicolons: SIGMA.</source>
   <translation>Eine Zahl für jede Messung in ihrer Reihenfolge, wie in DATES, durch Semikolon getrennt: 0.001; 0.0007. Zwischen Semikolons leer gelassen: SIGMA.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Standard deviation of the levelling over 1 km (mm)</source>
   <translation>Standardabweichung des Nivellements auf 1 km (mm)</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>One value for all surveys, each levelled outwards along the axis: of the levelling as used; where a section was levelled once, the value quoted for double levelling times 1.41, so that 0.5 becomes 0.7. Levelled heights share errors, and these look like a common shift and tilt: without SIGMA_KM or a covariance both are given, but not judged.</source>
   <translation>Ein Wert für alle Messungen, jede entlang der Achse nach außen nivelliert: des Nivellements, wie es verwendet wird; wo eine Strecke nur einfach nivelliert ist, der für das Doppelnivellement angegebene Wert mal 1,41, sodass aus 0,5 dann 0,7 wird. Nivellierte Höhen haben Fehler gemeinsam, und diese sehen wie eine gemeinsame Verschiebung und Kippung aus: Ohne SIGMA_KM oder eine Kovarianz werden beide angegeben, aber nicht beurteilt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>The same over 1 km (mm), for each survey</source>
   <translation>Dasselbe auf 1 km (mm), je Messung</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>As SIGMAS. Left empty between semicolons: SIGMA_KM.</source>
   <translation>Wie SIGMAS. Zwischen Semikolons leer gelassen: SIGMA_KM.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>What is compared of the line in plan, beside the heights of the same stations. Empty or none: nothing. offset: the offset from the axis, one line for all surveys, so that a movement of the whole shows too; all must be measured from the same axis. lateral: the field that 'Design heights and residuals' writes; from a chord or a fit it starts from each survey's own line, and then only differential movement is judged. Positive is right, looking up-chainage.</source>
   <translation>Was von der Linie im Grundriss verglichen wird, neben den Höhen derselben Stationen. Leer oder none (keine): nichts. offset (Querabstand): der Abstand von der Achse, eine Linie für alle Messungen, sodass sich auch eine Bewegung des Ganzen zeigt; alle müssen von derselben Achse aus gemessen sein. lateral (Querabweichung): das Feld, das 'Soll-Höhen und Abweichungen' schreibt; bei einer Sehne oder einem Ausgleich geht es von der eigenen Linie jeder Messung aus, und dann wird nur die Verformung beurteilt. Positiv ist rechts, in Stationierungsrichtung gesehen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Standard deviation of a lateral position</source>
   <translation>Standardabweichung einer seitlichen Lage</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Of a lateral departure or an offset, one value for all surveys, in the unit of heights: how well the position of a station is known relative to its neighbours. With 0.0008 in metres a movement is significant beyond 3.7 mm. Empty: from each survey's field 'sd_line'; without one, changes are given but not judged.</source>
   <translation>Einer Querabweichung oder eines Querabstands, ein Wert für alle Messungen, in der Höheneinheit: wie genau die Lage einer Station gegenüber ihren Nachbarn bekannt ist. Mit 0.0008 in Metern ist eine Bewegung ab 3,7 mm signifikant. Leer: aus dem Feld 'sd_line' jeder Messung; ohne dieses werden Änderungen angegeben, aber nicht beurteilt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Standard deviation of a lateral position, for each survey</source>
   <translation>Standardabweichung einer seitlichen Lage, je Messung</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>As SIGMAS. Left empty between semicolons: SIGMA_LINE.</source>
   <translation>Wie SIGMAS. Zwischen Semikolons leer gelassen: SIGMA_LINE.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Chainage where the levelling began</source>
   <translation>Stationierung am Nivellementbeginn</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>With SIGMA_KM, in the unit of chainages: on both sides errors grow from there; 1300 where it began at 1+300. Empty: 0.</source>
   <translation>Mit SIGMA_KM, in der Einheit der Stationierung: Von dort wachsen die Fehler nach beiden Seiten; 1300, wenn es bei 1+300 begann. Leer: 0.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Covariance of the heights of survey {}</source>
   <translation>Kovarianz der Höhen der Messung {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Table that 'Adjust levelled height differences' writes, fields point and covar, for survey {} in the order of the list. It has precedence over SIGMA_KM and a field 'sd'. Empty: the table that the record of the survey's layer names, if any. Stations are found by a field 'point', 'name' or 'station'.</source>
   <translation>Tabelle, die 'Nivellierte Höhenunterschiede ausgleichen' schreibt, Felder point und covar, für Messung {} in der Reihenfolge der Liste. Sie hat Vorrang vor SIGMA_KM und einem Feld 'sd'. Leer: die Tabelle, die das Laufprotokoll des Layers der Messung nennt, falls vorhanden. Stationen werden über ein Feld 'point', 'name' oder 'station' gefunden.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>What all stations of an axis share, separated from differential movement. robust: from the stations that have not moved among themselves; stretches of neighbours that stand out are set aside; where that is half an axis or more, no common movement is removed. mean: from all stations. none: not separated.</source>
   <translation>Was allen Stationen einer Achse gemeinsam ist, getrennt von der Verformung. robust (robust geschätzt): aus den Stationen, die sich untereinander nicht bewegt haben; auffällige Strecken benachbarter Stationen werden ausgesondert; wo das eine halbe Achse oder mehr ist, wird keine gemeinsame Bewegung abgezogen. mean (Mittel): aus allen Stationen. none (keine): keine Trennung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>Separate a common tilt too</source>
   <translation>Auch eine Kippung abtrennen</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/parameters.py" />
   <source>A rise along the axis in proportion to the chainage, as from a levelling error or a rotation of the whole: 0.000002 is 2 mm in a kilometre, 2 ppm; with LINE also a rotation in plan; where each survey has its own line, that is always separated.</source>
   <translation>Ein Anstieg entlang der Achse proportional zur Stationierung, wie durch einen Nivellementfehler oder eine Drehung des Ganzen: 0.000002 sind 2 mm auf einen Kilometer, 2 ppm; mit LINE auch eine Drehung im Grundriss; wo jede Messung ihre eigene Linie hat, wird diese immer abgetrennt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/survey.py" />
   <source>Layer '{}' has stations twice (rows in brackets): {}; to match by name each must occur once.</source>
   <translation>Layer '{}' enthält Stationen doppelt (Zeilen in Klammern): {}; zum Zuordnen nach dem Namen darf jede nur einmal vorkommen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/survey_accuracy.py" />
   <source>Layer '{}', field '{}', row {}: {} is not a standard deviation; it must be greater than zero.</source>
   <translation>Layer '{}', Feld '{}', Zeile {}: {} ist keine Standardabweichung; sie muss größer als null sein.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/survey_accuracy.py" />
   <source>{} is {}; it must be greater than zero, or empty.</source>
   <translation>{} ist {}; der Wert muss größer als null oder leer sein.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/survey_accuracy.py" />
   <source>{} has {}, but there are {}.</source>
   <translation>{} hat {}, vorhanden sind aber {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/survey_accuracy.py" />
   <source>value</source>
   <translation>Wert</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/survey_accuracy.py" />
   <source>values</source>
   <translation>Werte</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/survey_accuracy.py" />
   <source>{}: '{}' is not a standard deviation; it must be a number greater than zero.</source>
   <translation>{}: '{}' ist keine Standardabweichung; verlangt ist eine Zahl größer als null.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>{} of {} surveys could be read; check the paths of the others.</source>
   <translation>{} von {} Messungen lesbar; die Pfade der übrigen prüfen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>Two surveys or more are needed, and there is {}.</source>
   <translation>Mindestens zwei Messungen sind nötig; vorhanden: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>Layers '{}' and '{}' are the same survey; a survey has not changed against itself.</source>
   <translation>Die Layer '{}' und '{}' sind dieselbe Messung; gegen sich selbst hat sich eine Messung nicht geändert.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>Layer '{}' has no points, but points are expected here.</source>
   <translation>Layer '{}' enthält keine Punkte, hier werden aber Punkte erwartet.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>Not all surveys have a date (DATES, or a field 'date'): they are taken in the order given, without rates.</source>
   <translation>Nicht alle Messungen haben ein Datum (DATES oder ein Feld 'date'): Sie gelten in der angegebenen Reihenfolge, ohne Raten.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>Layers '{}' and '{}' have the same heights at every station; check that one survey is not given twice.</source>
   <translation>Die Layer '{}' und '{}' haben an jeder Station dieselben Höhen; prüfen, ob eine Messung doppelt angegeben ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>{}: '{}' is not a date; expected year-month-day, for example 2025-03-11.</source>
   <translation>{}: '{}' ist kein Datum; verlangt ist Jahr-Monat-Tag, zum Beispiel 2025-03-11.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>DATES has {}, but there are {}.</source>
   <translation>DATES hat {}, vorhanden sind aber {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>date</source>
   <translation>Datumsangabe</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>dates</source>
   <translation>Datumsangaben</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>Layer '{}' has no field 'height', no design_h and residual, and its points have no Z; choose the field with the heights (HEIGHT_FIELD).</source>
   <translation>Layer '{}' hat kein Feld 'height', weder design_h noch residual, und seine Punkte haben kein Z; das Feld mit den Höhen (HEIGHT_FIELD) wählen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>Layer '{}' has neither a field 'chainage' nor 'station'; run 'Measure chainage and offset' first.</source>
   <translation>Layer '{}' hat weder ein Feld 'chainage' noch 'station'; zuerst 'Stationierung und Querabstand messen' ausführen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>Layer '{}' has no heights.</source>
   <translation>Layer '{}' enthält keine Höhen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>Layer '{}': SIGMA_KM needs the chainage of every station.</source>
   <translation>Layer '{}': SIGMA_KM braucht die Stationierung jeder Station.</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>Layer '{}' has no field 'chainage', and its stations cannot be read: {}</source>
   <translation>Layer '{}' hat kein Feld 'chainage', und seine Stationen sind nicht lesbar: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>covariance in '{}'</source>
   <translation>Kovarianz in '{}'</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>field 'sd'</source>
   <translation>Feld 'sd'</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>, levelling {} mm over 1 km</source>
   <translation>, Nivellement {} mm auf 1 km</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>Layer '{}', row {}</source>
   <translation>Layer '{}', Zeile {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/comparison/surveys.py" />
   <source>Layer '{}' holds readings from {} to {}; its middle day stands for all.</source>
   <translation>Layer '{}' enthält Messwerte vom {} bis {}; der mittlere Tag steht für alle.</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>Adds to each point the undulation N, the ellipsoidal height h and the orthometric height H above the geoid, with h = H + N. The undulation comes from a grid (a raster of yours, or the EGM96 grid that PROJ has), from a field, or is one value. A grid that is not installed is never read as zero: the run stops and says what to install.

EGM96 is good to about 1 m as a height and to some seconds of arc as a slope; over a few kilometres it shows the geoid's slope, not its bending.</source>
   <translation>Ergänzt jeden Punkt um die Undulation N, die ellipsoidische Höhe h und die orthometrische Höhe H über dem Geoid, mit h = H + N. Die Undulation stammt aus einem Gitter (einem eigenen Raster oder dem EGM96-Gitter, das PROJ hat), aus einem Feld oder ist ein einziger Wert. Ein nicht installiertes Gitter wird nie als null gelesen: Der Lauf hält an und nennt, was zu installieren ist.

EGM96 ist als Höhe auf etwa 1 m und als Neigung auf einige Bogensekunden genau; über wenige Kilometer zeigt es die Geoidneigung, nicht die Geoidkrümmung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>Convert between ellipsoidal and orthometric heights</source>
   <translation>Ellipsoidische und orthometrische Höhen umrechnen</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>GNSS</source>
   <translation>GNSS</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>ellipsoidal</source>
   <translation>ellipsoidisch</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>geoid</source>
   <translation>Geoid</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>height</source>
   <translation>Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>orthometric</source>
   <translation>orthometrisch</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>undulation</source>
   <translation>Undulation</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>Undulation from</source>
   <translation>Undulation aus</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>grid: a raster or the grid of PROJ; field: of the points; constant: one value. Empty: as the record of the layer says, else the grid.</source>
   <translation>grid (Gitter): ein Raster oder das Gitter von PROJ; field (Feld): der Punkte; constant (konstant): ein Wert. Leer: wie im Laufprotokoll des Layers, sonst das Gitter.</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>The heights given are</source>
   <translation>Die gegebenen Höhen sind</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>ellipsoidal: as from GNSS; geoid: above the geoid, as from levelling. Empty: as the record of the layer says, else ellipsoidal.</source>
   <translation>ellipsoidal (ellipsoidisch): wie aus GNSS; geoid (Geoid): über dem Geoid, wie aus Nivellement. Leer: wie im Laufprotokoll des Layers, sonst ellipsoidal.</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>Converted heights</source>
   <translation>Umgerechnete Höhen</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>The points with undulation N, ellipsoidal height h and orthometric height H: 3742.600 and 43.612 give 3786.212.</source>
   <translation>Die Punkte mit Undulation N, ellipsoidischer Höhe h und orthometrischer Höhe H: 3742,600 und 43,612 ergeben 3786,212.</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>Geoid along the axes</source>
   <translation>Geoid entlang der Achsen</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>Points along each axis with the change of N since its start, and the bending of the geoid between its ends.</source>
   <translation>Punkte entlang jeder Achse mit der Änderung von N seit dem Anfang und der Geoidkrümmung zwischen den Enden.</translation>
  </message>
  <message>
   <location filename="../../algorithms/convert_heights.py" />
   <source>Line of the structure: the run then says how the geoid slopes and bends along it. Chainages are those on the ellipsoid, from 0.</source>
   <translation>Linie des Bauwerks: Der Lauf nennt dann, wie sich das Geoid entlang der Linie neigt und krümmt. Die Stationierung gilt auf dem Ellipsoid, von 0 an.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/angles.py" />
   <source>The unit of angles '{}' is unknown; known are {}.</source>
   <translation>Die Winkeleinheit '{}' ist unbekannt; bekannt sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/angles.py" />
   <source>The angle '{}' is not a number.</source>
   <translation>Der Winkel '{}' ist keine Zahl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/angles.py" />
   <source>The angle '{}' is not degrees, minutes and seconds, such as 88 23 15.</source>
   <translation>Der Winkel '{}' ist nicht in Grad, Minuten und Sekunden angegeben, wie 88 23 15.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/angles.py" />
   <source>The angle '{}' has minutes or seconds of 60 or more.</source>
   <translation>Der Winkel '{}' hat Minuten oder Sekunden von 60 oder mehr.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/angles.py" />
   <source>The vertical angle '{}' is not a sight from one point to another.</source>
   <translation>Der Höhenwinkel '{}' gehört zu keiner Visur von einem Punkt zum andern.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/angles.py" />
   <source>The zenith angle '{}' is not a sight from one point to another.</source>
   <translation>Der Zenitwinkel '{}' gehört zu keiner Visur von einem Punkt zum andern.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/axis.py" />
   <source>Axis '{}' has a vertex without a valid latitude and longitude.</source>
   <translation>Achse '{}' hat einen Stützpunkt ohne gültige Breite und Länge.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/axis.py" />
   <source>Axis '{}' has only one vertex; an axis needs at least two.</source>
   <translation>Achse '{}' hat nur einen Stützpunkt; eine Achse braucht mindestens zwei.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/axis.py" />
   <source>Axis '{}' has zero length: all its vertices are at one place.</source>
   <translation>Achse '{}' hat die Länge null: Alle Stützpunkte liegen an einem Ort.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/axis.py" />
   <source>Axis '{}' is closed: its two ends are at one place, so chainage has no direction; cut it open.</source>
   <translation>Achse '{}' ist geschlossen: Ihre Enden liegen an einem Ort, sodass die Stationierung keine Richtung hat; sie ist aufzutrennen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/axis.py" />
   <source>Axis '{}': the chainage height and the first chainage must be numbers.</source>
   <translation>Achse '{}': Stationierungshöhe und erste Stationierung müssen Zahlen sein.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/axis.py" />
   <source>Axis '{}': a chainage height of {:g} m is not on Earth.</source>
   <translation>Achse '{}': Eine Stationierungshöhe von {:g} m gibt es auf der Erde nicht.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/axis.py" />
   <source>Axis '{}' has parts that do not meet: part {} begins {:.3f} m from the end of part {}.</source>
   <translation>Achse '{}' hat Teile, die sich nicht treffen: Teil {} beginnt {:.3f} m vom Ende von Teil {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/conformance.py" />
   <source>A probability needs a positive standard deviation and a tolerance that is not negative.</source>
   <translation>Eine Wahrscheinlichkeit braucht eine positive Standardabweichung und eine Toleranz, die nicht negativ ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/conformance.py" />
   <source>The test of normality needs at least 8 values.</source>
   <translation>Der Test auf Normalverteilung braucht mindestens 8 Werte.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/controls.py" />
   <source>Axis '{}': controls A and B are at the same chainage; a {} needs two that are apart.</source>
   <translation>Achse '{}': Die Zwangspunkte A und B haben dieselbe Stationierung; Entwurf {}: nötig sind zwei verschiedene.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/controls.py" />
   <source>Axis '{}': control {} at chainage {} has no height, and no station with a height lies within {} of it.</source>
   <translation>Achse '{}': Zwangspunkt {} bei Stationierung {} hat keine Höhe, und keine Station mit Höhe liegt höchstens {} davon entfernt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/controls.py" />
   <source>Axis '{}': control {} has no chainage, and no station of the axis has a height to take it from.</source>
   <translation>Achse '{}': Zwangspunkt {} hat keine Stationierung, und keine Station der Achse hat eine Höhe, der sie zu entnehmen wäre.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/covariance.py" />
   <source>A standard deviation is zero, negative or not a number.</source>
   <translation>Eine Standardabweichung ist null, negativ oder keine Zahl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/covariance.py" />
   <source>The covariance of the heights is not positive definite.</source>
   <translation>Die Kovarianz der Höhen ist nicht positiv definit.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/covariance_text.py" />
   <source>A covariance is written for at most {} points, and there are {}.</source>
   <translation>Eine Kovarianz wird für höchstens {} Punkte geschrieben, und es sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/covariance_text.py" />
   <source>The covariance names a point twice.</source>
   <translation>Die Kovarianz nennt einen Punkt zweimal.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/covariance_text.py" />
   <source>The covariance has no point '{}'.</source>
   <translation>Die Kovarianz hat keinen Punkt '{}'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/covariance_text.py" />
   <source>The covariance of point '{}' is not complete: {} numbers are expected.</source>
   <translation>Die Kovarianz des Punktes '{}' ist unvollständig: {} Zahlen werden erwartet.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/curvature.py" />
   <source>Axis '{}': a curvature factor needs at least {} stations with heights; there are {}.</source>
   <translation>Achse '{}': Ein Krümmungsfaktor braucht mindestens {} Stationen mit Höhe; es sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/curvature.py" />
   <source>Axis '{}': all stations are at one chainage.</source>
   <translation>Achse '{}': Alle Stationen haben dieselbe Stationierung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/curvature.py" />
   <source>Too few stations are left.</source>
   <translation>Es bleiben zu wenige Stationen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/curvature.py" />
   <source>The stations are at too few places to show a bend.</source>
   <translation>Die Stationen liegen an zu wenigen Orten, um eine Biegung zu zeigen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/data_check.py" />
   <source>A spacing needs chainages that are numbers.</source>
   <translation>Ein Abstand braucht Stationierungen, die Zahlen sind.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/data_check.py" />
   <source>An axis is drawn between two stations; there is only one.</source>
   <translation>Eine Achse wird zwischen zwei Stationen gezeichnet; es gibt nur eine.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/data_check.py" />
   <source>An axis is drawn between two stations; all stand at one place.</source>
   <translation>Eine Achse wird zwischen zwei Stationen gezeichnet; alle stehen an einem Ort.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/design.py" />
   <source>The design '{}' is unknown; known are {}.</source>
   <translation>Der Entwurf '{}' ist unbekannt; bekannt sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/design.py" />
   <source>The Earth model '{}' is unknown; known are {}.</source>
   <translation>Das Erdmodell '{}' ist unbekannt; bekannt sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/design.py" />
   <source>The design's {} is not a number.</source>
   <translation>Entwurf: {} ist keine Zahl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/design.py" />
   <source>The design 'reference' needs a reference.</source>
   <translation>Der Entwurf 'reference' braucht einen Bezug.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/design.py" />
   <source>A reference holds on the ellipsoid only; the Earth model must be 'ellipsoid'.</source>
   <translation>Ein Bezug gilt nur auf dem Ellipsoid; das Erdmodell muss 'ellipsoid' sein.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/design.py" />
   <source>The design 'inclined' needs a slope.</source>
   <translation>Der Entwurf 'inclined' braucht eine Neigung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/design.py" />
   <source>A slope of {:g} is steeper than 45 degrees: it is a rise per length without unit, 0.003 for 3 mm per metre.</source>
   <translation>Eine Neigung von {:g} ist steiler als 45 Grad: Sie ist ein Anstieg je Länge ohne Einheit, 0.003 für 3 mm je Meter.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/design.py" />
   <source>The design 'grade' has a slope and a second control: give one of them.</source>
   <translation>Der Entwurf 'grade' hat eine Neigung und einen zweiten Zwangspunkt: nur eines von beiden angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/design.py" />
   <source>Both controls are at chainage {}; they must be apart.</source>
   <translation>Beide Zwangspunkte haben die Stationierung {}; sie müssen auseinanderliegen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/design.py" />
   <source>A sphere of radius {:g} m is not that of the Earth; RADIUS is in metres.</source>
   <translation>Eine Kugel mit dem Radius {:g} m ist nicht die der Erde; RADIUS ist in Metern.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/design.py" />
   <source>Axis '{}' bends: it departs {} from the geodesic of its design, so a straight structure ('{}') cannot follow it; check each leg by itself.</source>
   <translation>Achse '{}' knickt: Sie weicht {} von der Geodätischen ihres Entwurfs ab, sodass ihr ein gerades Bauwerk ('{}') nicht folgen kann; jeder Achsabschnitt ist für sich zu prüfen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/exaggeration.py" />
   <source>No round number lies below {:g}.</source>
   <translation>Unter {:g} liegt keine runde Zahl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/fit.py" />
   <source>All stations are at one place; a plane needs stations apart.</source>
   <translation>Alle Stationen liegen an einem Ort; eine Ebene braucht Stationen mit Abstand.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/fit.py" />
   <source>The stations lie on one line (none is more than {} from it over {}), which determines no plane; fit a line, or add an axis in another direction.</source>
   <translation>Die Stationen liegen auf einer Linie (größter Abstand {} auf {} Länge), die keine Ebene bestimmt; eine Gerade einpassen oder eine Achse in anderer Richtung hinzunehmen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/fit.py" />
   <source>A fit of {} unknowns needs at least {} stations with heights; there are {}.</source>
   <translation>Eine Ausgleichung mit {} Unbekannten braucht mindestens {} Stationen mit Höhe; es sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/fit.py" />
   <source>A fit of {} unknowns is left with {} stations.</source>
   <translation>Einer Ausgleichung mit {} Unbekannten bleiben {} Stationen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/fit.py" />
   <source>The stations do not determine the fit: they are at one place or on one line.</source>
   <translation>Die Stationen bestimmen die Ausgleichung nicht: Sie liegen an einem Ort oder auf einer Linie.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/fit.py" />
   <source>The fitted plane does not pass over all stations; the heights or places are wrong.</source>
   <translation>Die eingepasste Ebene verläuft nicht über alle Stationen; die Höhen oder die Orte sind falsch.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/geodesy.py" />
   <source>An ellipsoid with a = {} m and f = {} is not an Earth ellipsoid.</source>
   <translation>Ein Ellipsoid mit a = {} m und f = {} ist kein Erdellipsoid.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/geodesy.py" />
   <source>The coordinate reference system is not understood: {}</source>
   <translation>Das Koordinatenbezugssystem wird nicht verstanden: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/geodesy.py" />
   <source>The coordinate reference system '{}' has no latitude and longitude behind it.</source>
   <translation>Dem Koordinatenbezugssystem '{}' liegen keine Breite und Länge zugrunde.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/geodesy.py" />
   <source>From '{}' to '{}' only a ballpark transformation is known here, which can be wrong by metres: give both layers the same datum, or install the transformation's grid.</source>
   <translation>Von '{}' nach '{}' ist hier nur eine grobe Transformation bekannt, die um Meter falsch sein kann: beiden Layern dasselbe Datum geben oder das Gitter der Transformation installieren.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/geodesy.py" />
   <source>Some coordinates lie outside the domain of '{}'.</source>
   <translation>Einige Koordinaten liegen außerhalb des Bereichs von '{}'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/geodesy.py" />
   <source>The geoid grid EGM96 is not installed, so undulations cannot be found: install PROJ's grids (package proj-data on Debian and Ubuntu), or give a geoid raster, a field or one value.</source>
   <translation>Das Geoidgitter EGM96 ist nicht installiert, sodass Undulationen nicht zu finden sind: die Gitter von PROJ installieren (Paket proj-data unter Debian und Ubuntu) oder ein Geoidraster, ein Feld oder einen Wert angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/geodesy.py" />
   <source>The geoid grid has no value at some of the stations.</source>
   <translation>Das Geoidgitter hat an einigen Stationen keinen Wert.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/geoid_along.py" />
   <source>The geoid's slope needs undulations at two places at least.</source>
   <translation>Die Geoidneigung braucht Undulationen an mindestens zwei Orten.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/geoid_slope.py" />
   <source>The accuracy of the geoid's slope and bending must be a number that is not negative.</source>
   <translation>Die Genauigkeit von Geoidneigung und Geoidkrümmung muss eine nicht negative Zahl sein.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/lateral.py" />
   <source>Axis '{}': the line '{}' needs {} stations; it has {}.</source>
   <translation>Achse '{}': Die Linie '{}' braucht {} Stationen; es sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/lateral.py" />
   <source>Axis '{}': the stations of its line are at one place, so it has no direction.</source>
   <translation>Achse '{}': Die Stationen ihrer Linie liegen an einem Ort, sodass sie keine Richtung hat.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/lateral.py" />
   <source>Axis '{}': its stations do not lie along a line, so none can be fitted.</source>
   <translation>Achse '{}': Ihre Stationen liegen nicht entlang einer Linie, sodass keine eingepasst werden kann.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/lateral_fit.py" />
   <source>Axis '{}': a line in plan needs 2 stations, and is left with {}.</source>
   <translation>Achse '{}': Eine Linie im Grundriss braucht 2 Stationen, und es bleiben {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/least_squares.py" />
   <source>The stations do not determine the fit.</source>
   <translation>Die Stationen bestimmen die Ausgleichung nicht.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/leg_regressions.py" />
   <source>Axis '{}': the stations are at too few places to show a bend.</source>
   <translation>Achse '{}': Die Stationen liegen an zu wenigen Orten, um eine Biegung zu zeigen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/level_book.py" />
   <source>Row {}: an intermediate sight needs a point's name.</source>
   <translation>Zeile {}: Ein Zwischenblick braucht den Namen eines Punktes.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/level_net.py" />
   <source>The net has no lines.</source>
   <translation>Das Netz hat keine Linien.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/level_net.py" />
   <source>Line {} ({} to {}) starts and ends at one point.</source>
   <translation>Linie {} ({} bis {}) beginnt und endet am selben Punkt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/level_net.py" />
   <source>Line {} ({} to {}) has no height difference.</source>
   <translation>Linie {} ({} bis {}) hat keinen Höhenunterschied.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/level_net.py" />
   <source>Line {} ({} to {}) has a negative length.</source>
   <translation>Linie {} ({} bis {}) hat eine negative Länge.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/level_net.py" />
   <source>Line {} ({} to {}) has a standard deviation that is zero, negative or no number.</source>
   <translation>Linie {} ({} bis {}) hat eine Standardabweichung, die null, negativ oder keine Zahl ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/levelled_weights.py" />
   <source>A standard deviation is zero, negative or no number.</source>
   <translation>Eine Standardabweichung ist null, negativ oder keine Zahl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/levelled_weights.py" />
   <source>A distance along the levelling is negative or no number.</source>
   <translation>Eine Entfernung entlang des Nivellements ist negativ oder keine Zahl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/levelling.py" />
   <source>This needs scipy in QGIS's own Python; install it (python3-scipy on Debian and Ubuntu).</source>
   <translation>Dies braucht scipy im Python von QGIS; es ist zu installieren (python3-scipy unter Debian und Ubuntu).</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/levelling.py" />
   <source>A benchmark is given both as fixed and with a standard deviation.</source>
   <translation>Ein Höhenfestpunkt ist sowohl als fest als auch mit Standardabweichung angegeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/levelling.py" />
   <source>A benchmark's standard deviation is not positive.</source>
   <translation>Die Standardabweichung eines Höhenfestpunkts ist nicht positiv.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/levelling.py" />
   <source>A benchmark's height is not a number.</source>
   <translation>Die Höhe eines Höhenfestpunkts ist keine Zahl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/levelling.py" />
   <source>A point without a height has no covariance.</source>
   <translation>Ein Punkt ohne Höhe hat keine Kovarianz.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/levelling.py" />
   <source>Benchmarks with a standard deviation need lines with standard deviations in metres too.</source>
   <translation>Höhenfestpunkte mit Standardabweichung brauchen Linien, deren Standardabweichungen ebenfalls in Metern sind.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/levelling.py" />
   <source>The net has no benchmark.</source>
   <translation>Das Netz hat keinen Höhenfestpunkt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/matching.py" />
   <source>Matching needs a tolerance greater than zero.</source>
   <translation>Das Zuordnen braucht eine Toleranz über null.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/matching.py" />
   <source>The matching tolerance takes too many stations for one; make it smaller than half of their spacing.</source>
   <translation>Die Toleranz der Zuordnung hält zu viele Stationen für eine; sie muss kleiner sein als ihr halber Abstand.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/measure.py" />
   <source>A station has no valid latitude and longitude.</source>
   <translation>Eine Station hat keine gültige Breite und Länge.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/misclosure.py" />
   <source>The levelling class '{}' is unknown for '{}'; known are {}.</source>
   <translation>Die Nivellementklasse '{}' ist für '{}' unbekannt; bekannt sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/misclosure.py" />
   <source>A misclosure limit needs a factor and a length that are not negative.</source>
   <translation>Eine Grenze für Widersprüche braucht einen Faktor und eine Länge, die nicht negativ sind.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/normal_gravity.py" />
   <source>A latitude is beyond 90 degrees or not a number.</source>
   <translation>Eine Breite liegt jenseits von 90 Grad oder ist keine Zahl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/normal_gravity.py" />
   <source>A height is not between -1000 m and 10,000 m: the gravity correction needs heights above the sea, not above a local datum.</source>
   <translation>Eine Höhe liegt nicht zwischen -1000 m und 10 000 m: Die Schwerereduktion braucht Höhen über dem Meer, nicht über einem örtlichen Nullpunkt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/number_reading.py" />
   <source>number</source>
   <translation>Zahl</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/number_reading.py" />
   <source>The {} '{}' is not in the unit of the run.</source>
   <translation>{} '{}': nicht in der Einheit des Laufs.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/number_reading.py" />
   <source>The {} '{}' is infinite.</source>
   <translation>{} '{}': unendlich.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/number_reading.py" />
   <source>The {} '{}' is not a number.</source>
   <translation>{} '{}' ist keine Zahl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/number_reading.py" />
   <source>The {} '{}' is not a number. The other cells have a decimal comma.</source>
   <translation>{} '{}': keine Zahl. Die übrigen Zellen haben ein Dezimalkomma.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/number_reading.py" />
   <source>The {} '{}' is not a number. The other cells have a decimal point.</source>
   <translation>{} '{}': keine Zahl. Die übrigen Zellen haben einen Dezimalpunkt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/number_reading.py" />
   <source>entry</source>
   <translation>Eintrag</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/number_reading.py" />
   <source>'{}' may have a decimal comma or a group of thousands: write it with a point, or without a comma.</source>
   <translation>'{}' kann ein Dezimalkomma oder eine Tausendergruppe enthalten: mit Punkt oder ohne Komma schreiben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/number_reading.py" />
   <source>The {} '{}' may have a decimal comma or a group of thousands, and no other cell of the column tells; give the decimal sign (DECIMAL_SIGN).</source>
   <translation>{} '{}': Das kann ein Dezimalkomma oder eine Tausendergruppe sein, und keine andere Zelle der Spalte zeigt, was gilt; das Dezimalzeichen angeben (DECIMAL_SIGN).</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/plane.py" />
   <source>The plane is not defined: its point or its normal is missing.</source>
   <translation>Die Ebene ist nicht bestimmt: Ihr Punkt oder ihre Normale fehlt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/plane.py" />
   <source>A chord needs two controls at different places.</source>
   <translation>Eine Sehne braucht zwei Zwangspunkte an verschiedenen Orten.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/profile_views.py" />
   <source>The columns of a profile differ in length.</source>
   <translation>Die Spalten eines Längsschnitts sind verschieden lang.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/profile_views.py" />
   <source>The chainages of a profile must be known and must not fall.</source>
   <translation>Die Stationierungen eines Längsschnitts müssen bekannt sein und dürfen nicht fallen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/profile_views.py" />
   <source>The view '{}' is unknown; known are {}.</source>
   <translation>Die Ansicht '{}' ist unbekannt; bekannt sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/profile_views.py" />
   <source>A chart without extent has no exaggeration.</source>
   <translation>Ein Diagramm ohne Ausdehnung hat keine Überhöhung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/schedule.py" />
   <source>The method '{}' is unknown; known are {}.</source>
   <translation>Das Verfahren '{}' ist unbekannt; bekannt sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/schedule.py" />
   <source>The shim increment must be at least 0.001 mm; leave it empty for any movement.</source>
   <translation>Die Blechstufe muss mindestens 0,001 mm betragen; leer lassen für beliebige Wege.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/schedule.py" />
   <source>greatest raise</source>
   <translation>größtes Heben</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/schedule.py" />
   <source>greatest lowering</source>
   <translation>größtes Senken</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/schedule.py" />
   <source>limit between neighbours</source>
   <translation>Grenze zwischen Nachbarn</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/schedule.py" />
   <source>The {} cannot be negative.</source>
   <translation>Nicht negativ sein darf: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/schedule.py" />
   <source>The least movement needs a tolerance.</source>
   <translation>Die kleinste Bewegung braucht eine Toleranz.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/schedule.py" />
   <source>A limit between neighbours needs scipy in QGIS's own Python; install it (python3-scipy on Debian and Ubuntu).</source>
   <translation>Eine Grenze zwischen Nachbarn braucht scipy im Python von QGIS; es ist zu installieren (python3-scipy unter Debian und Ubuntu).</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/schedule.py" />
   <source>The movements could not be determined: {}.</source>
   <translation>Die Bewegungen ließen sich nicht bestimmen: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/sight_reduction.py" />
   <source>The standard deviation of the {} is negative.</source>
   <translation>Negative Standardabweichung: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/sight_reduction.py" />
   <source>A sight has no coefficient of refraction k.</source>
   <translation>Eine Visur hat keinen Refraktionskoeffizienten k.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/sight_reduction.py" />
   <source>The coefficient of refraction k is not a number near 0, such as 0.13.</source>
   <translation>Der Refraktionskoeffizient k ist keine Zahl nahe 0, wie 0.13.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/sights.py" />
   <source>A latitude lies beyond 90 degrees.</source>
   <translation>Eine Breite liegt jenseits von 90 Grad.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/sights.py" />
   <source>A line of sight is so steep that it never arrives above the far point.</source>
   <translation>Eine Ziellinie ist so steil, dass sie nie über dem fernen Punkt ankommt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/sights.py" />
   <source>An air temperature is below 150 K; it is given in kelvin.</source>
   <translation>Eine Lufttemperatur liegt unter 150 K; sie wird in Kelvin angegeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/sights.py" />
   <source>A temperature gradient is not a number.</source>
   <translation>Ein Temperaturgradient ist keine Zahl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/sights.py" />
   <source>A reciprocal observation is not a number.</source>
   <translation>Eine gegenseitige Beobachtung ist keine Zahl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/sights.py" />
   <source>A {} is negative or not a number.</source>
   <translation>Negativ oder keine Zahl: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/sights.py" />
   <source>A {} is not a number.</source>
   <translation>Keine Zahl: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/sights.py" />
   <source>A distance is zero.</source>
   <translation>Eine Entfernung ist null.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/sights.py" />
   <source>A radius of the Earth is below 1000 m or not a number; it is given in metres.</source>
   <translation>Ein Erdradius liegt unter 1000 m oder ist keine Zahl; er wird in Metern angegeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/sights.py" />
   <source>With a coefficient of refraction of 1 or more the line of sight follows the Earth.</source>
   <translation>Bei einem Refraktionskoeffizienten von 1 oder mehr folgt die Ziellinie der Erde.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/station_notation.py" />
   <source>'{}' is not a station: expected such as 12+50, 1+250 or a distance.</source>
   <translation>'{}' ist keine Station: Erwartet wird etwa 12+50, 1+250 oder eine Entfernung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/station_notation.py" />
   <source>'{}' is not a station: after the plus stand two digits (stations of 100) or three (of 1000).</source>
   <translation>'{}' ist keine Station: Nach dem Plus stehen zwei Ziffern (Stationen zu 100) oder drei (zu 1000).</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/station_notation.py" />
   <source>The station equation {:g} = {:g} lies behind the one before it.</source>
   <translation>Die Fehlstation {:g} = {:g} liegt hinter der vor ihr.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/station_notation.py" />
   <source>Stretch {} does not exist: there are {}.</source>
   <translation>Den Stationierungsbereich {} gibt es nicht: Es sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/station_notation.py" />
   <source>Station {:g} does not exist on this axis: it lies in the gap of a station equation.</source>
   <translation>Station {:g} gibt es auf dieser Achse nicht: Sie liegt in der Lücke einer Fehlstation.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/station_notation.py" />
   <source>Station {:g} occurs {} times because of a station equation: write its stretch in brackets behind it, such as 12+50 (2).</source>
   <translation>Station {:g} kommt wegen einer Fehlstation {}-mal vor: ihren Bereich in Klammern dahinter schreiben, wie 12+50 (2).</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/station_notation.py" />
   <source>The station equation '{}' is unreadable: expected back=ahead.</source>
   <translation>Die Fehlstation '{}' ist nicht lesbar: Erwartet wird rückwärts=vorwärts.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/two_peg.py" />
   <source>A reading of the two-peg test is not a number.</source>
   <translation>Eine Ablesung der Ziellinienprüfung ist keine Zahl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/two_peg.py" />
   <source>A sight length of the two-peg test is negative or not a number.</source>
   <translation>Eine Zielweite der Ziellinienprüfung ist negativ oder keine Zahl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/two_peg.py" />
   <source>The two setups of the two-peg test have sights alike; one must be balanced, the other not.</source>
   <translation>Die beiden Aufstellungen der Ziellinienprüfung haben gleiche Zielweiten; eine muss ausgewogen sein, die andere nicht.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/two_peg.py" />
   <source>The two-peg test '{}' is not two setups of four numbers each: both readings and both sight lengths, as in 1.476, 1.432, 20, 20; 1.556, 1.472, 50, 10.</source>
   <translation>Die Ziellinienprüfung '{}' besteht nicht aus zwei Aufstellungen zu je vier Zahlen: beide Ablesungen und beide Zielweiten, wie in 1.476, 1.432, 20, 20; 1.556, 1.472, 50, 10.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/undulations.py" />
   <source>The geoid grid does not reach latitude {:.5f}, longitude {:.5f}.</source>
   <translation>Das Geoidgitter reicht nicht bis Breite {:.5f}, Länge {:.5f}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/undulations.py" />
   <source>The geoid grid has no value at latitude {:.5f}, longitude {:.5f}.</source>
   <translation>Das Geoidgitter hat bei Breite {:.5f}, Länge {:.5f} keinen Wert.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/undulations.py" />
   <source>The geoid grid has no value at latitude {:.5f}, longitude {:.5f}, beside latitude {:.5f}, longitude {:.5f}: too close for a smooth surface between the nodes. Take a grid that covers the structure and some cells around it, or set GEOID_BETWEEN to bilinear.</source>
   <translation>Das Geoidgitter hat bei Breite {:.5f}, Länge {:.5f} keinen Wert, neben Breite {:.5f}, Länge {:.5f}: zu nah für eine glatte Fläche zwischen den Knoten. Ein Gitter nehmen, das das Bauwerk und einige Zellen darum bedeckt, oder GEOID_BETWEEN auf bilinear setzen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/undulations.py" />
   <source>Undulations between the nodes of a grid need scipy in QGIS's own Python; install it (python3-scipy on Debian and Ubuntu), or set GEOID_BETWEEN to bilinear.</source>
   <translation>Undulationen zwischen den Knoten eines Gitters brauchen scipy im Python von QGIS; es ist zu installieren (python3-scipy unter Debian und Ubuntu), oder GEOID_BETWEEN auf bilinear setzen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/undulations.py" />
   <source>The geoid grid has {} by {} nodes; a smooth surface between them needs {} by {}. Set GEOID_BETWEEN to bilinear.</source>
   <translation>Das Geoidgitter hat {} mal {} Knoten; eine glatte Fläche dazwischen braucht {} mal {}. GEOID_BETWEEN auf bilinear setzen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/unit_check.py" />
   <source>Axis '{}': the heights bend {:.2f} times as much as a straight structure does; they may be in feet, read in another unit. Check HEIGHT_UNIT.</source>
   <translation>Achse '{}': Die Höhen krümmen sich {:.2f}-mal so stark wie ein gerades Bauwerk; sie sind vielleicht in Fuß und in einer anderen Einheit gelesen. HEIGHT_UNIT prüfen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/unit_check.py" />
   <source>Axis '{}': the heights bend {:.2f} times as much as a straight structure does; they may be in metres, read in another unit. Check HEIGHT_UNIT.</source>
   <translation>Achse '{}': Die Höhen krümmen sich {:.2f}-mal so stark wie ein gerades Bauwerk; sie sind vielleicht in Metern und in einer anderen Einheit gelesen. HEIGHT_UNIT prüfen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/unit_check.py" />
   <source>Axis '{}': the heights are about {:.2f} times the controls' heights; they may be in feet, read in another unit. Check HEIGHT_UNIT.</source>
   <translation>Achse '{}': Die Höhen sind etwa das {:.2f}-Fache der Höhen der Zwangspunkte; sie sind vielleicht in Fuß und in einer anderen Einheit gelesen. HEIGHT_UNIT prüfen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/unit_check.py" />
   <source>Axis '{}': the heights are about {:.2f} times the controls' heights; they may be in metres, read in another unit. Check HEIGHT_UNIT.</source>
   <translation>Achse '{}': Die Höhen sind etwa das {:.2f}-Fache der Höhen der Zwangspunkte; sie sind vielleicht in Metern und in einer anderen Einheit gelesen. HEIGHT_UNIT prüfen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/units.py" />
   <source>The unit '{}' is unknown; known are {}.</source>
   <translation>Die Einheit '{}' ist unbekannt; bekannt sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/what_if.py" />
   <source>The station at chainage {} has no height or no place.</source>
   <translation>Die Station bei Stationierung {} hat keine Höhe oder keinen Ort.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/what_if.py" />
   <source>Chainage {} lies beyond the stations.</source>
   <translation>Stationierung {} liegt jenseits der Stationen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/core/what_if.py" />
   <source>Both points are at one chainage; a line needs two that are apart.</source>
   <translation>Beide Punkte haben dieselbe Stationierung; eine Gerade braucht zwei verschiedene.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/axis_designs.py" />
   <source>Axis '{}': {}</source>
   <translation>Achse '{}': {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/axis_designs.py" />
   <source>GRAVITY 'normal' needs heights above the sea, but these are ellipsoidal.</source>
   <translation>GRAVITY 'normal' verlangt Höhen über dem Meer, diese sind aber ellipsoidisch.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/axis_designs.py" />
   <source>Axis '{}': the tolerance {} is negative.</source>
   <translation>Achse '{}': Die Toleranz {} ist negativ.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/axis_designs.py" />
   <source>Axis '{}': the tolerance of the line {} is negative.</source>
   <translation>Achse '{}': Die Toleranz der Linie {} ist negativ.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/axis_designs.py" />
   <source>Axis '{}', {}: {}</source>
   <translation>Achse '{}', {}: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/axis_designs.py" />
   <source>the design 'reference' needs a reference layer (REFERENCE).</source>
   <translation>Der Entwurf 'reference' braucht einen Bezugslayer (REFERENCE).</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/axis_designs.py" />
   <source>layer '{}' has {} references for it; there are {}.</source>
   <translation>Layer '{}' enthält dafür {} Bezüge; vorhanden: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/axis_designs.py" />
   <source>no</source>
   <translation>keine</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/axis_designs.py" />
   <source>the reference '{}' was made with UNDULATION '{}', but this run has '{}'.</source>
   <translation>Der Bezug '{}' wurde mit UNDULATION '{}' erzeugt, dieser Lauf hat aber '{}'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/axis_designs.py" />
   <source>the reference '{}' is on the datum '{}', but the stations are on '{}'.</source>
   <translation>Der Bezug '{}' liegt im Datum '{}', die Stationen liegen aber in '{}'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_messages.py" />
   <source>Understood: {} stations of layer '{}'; heights from {} in {}; {}.</source>
   <translation>Verstanden: {} Stationen aus Layer '{}'; Höhen: {} in {}; {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_messages.py" />
   <source>RMS: {}.</source>
   <translation>RMS: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_messages.py" />
   <source>{} {}</source>
   <translation>{} {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_messages.py" />
   <source>{}: more than {} of {} stations would have to be set aside as blunders, so none was: the heights do not follow one curve within their standard deviations.</source>
   <translation>{}: Mehr als {} von {} Stationen wären als grobe Fehler auszusondern, daher wurde keine ausgesondert: Die Höhen folgen innerhalb ihrer Standardabweichungen keiner gemeinsamen Kurve.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_messages.py" />
   <source>{}: suspected of a blunder and set aside: {}.</source>
   <translation>{}: als grobe Fehler vermutet und ausgesondert: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_messages.py" />
   <source>{}: {} neighbours from {} to {} are set aside on one side: that looks like a stretch that has moved, not like blunders. The shape is determined from the other stations.</source>
   <translation>{}: {} benachbarte Stationen von {} bis {} sind auf derselben Seite ausgesondert: Das spricht für eine bewegte Strecke, nicht für grobe Fehler. Die Form ist aus den übrigen Stationen bestimmt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_messages.py" />
   <source>{} more: see the table.</source>
   <translation>Weitere {}: siehe Tabelle.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>Straight in space is not level: the Earth curves away under a straight line, by about 8 cm over the first kilometre, 31 cm over two. The heights of a long structure therefore show which of the two it follows. The curvature factor measures it: 1 is straight in space, 0 is a constant slope above the level surface, which water follows.</source>
   <translation>Gerade im Raum ist nicht niveaugleich: Die Erde krümmt sich unter einer Geraden weg, um etwa 8 cm auf dem ersten Kilometer, um 31 cm auf zwei. Die Höhen eines langen Bauwerks zeigen deshalb, welchem von beiden es folgt. Der Krümmungsfaktor misst das: 1 ist gerade im Raum, 0 ist eine konstante Neigung über der Niveaufläche, der das Wasser folgt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>Heights of the layer ‘{}’; {}. {}</source>
   <translation>Höhen des Layers „{}“; {}. {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>The first {} of {} are drawn; the numbers of all are above.</source>
   <translation>Gezeichnet sind die ersten {} von {}; die Zahlen aller stehen oben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>axis</source>
   <translation>Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>axes</source>
   <translation>Achsen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>How to read it</source>
   <translation>So ist es zu lesen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>The verdict is the sentence above, not a ranking of the shapes. It is straight where the 95 % interval of the factor holds 1 and not 0, level where it holds 0 and not 1, neither where it holds none of them, and undecided where it holds both. The factor is one number and says nothing of waves: where chi squared or the order of the residuals shows that the heights do not follow the curve, it is straight or level on average only. A straight line computed with no curvature and a constant grade on the real Earth are the same curve; no survey of heights can tell them apart.</source>
   <translation>Das Urteil ist der Satz oben, keine Rangfolge der Formen. Es lautet gerade, wo das 95-%-Intervall des Faktors 1 enthält und 0 nicht, niveaugleich, wo es 0 enthält und 1 nicht, weder noch, wo es keines enthält, und unentschieden, wo es beide enthält. Der Faktor ist eine einzige Zahl und sagt nichts über Wellen: Zeigt Chi-Quadrat oder die Reihenfolge der Abweichungen, dass die Höhen der Kurve nicht folgen, so ist das Bauwerk nur im Mittel gerade oder niveaugleich. Eine ohne Erdkrümmung gerechnete Gerade und eine konstante Neigung auf der wirklichen Erde sind dieselbe Kurve; keine Höhenmessung kann sie unterscheiden.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>For review. Field work follows local codes, and a licensed surveyor or engineer decides.</source>
   <translation>Zur Prüfung. Für Arbeiten vor Ort gelten die örtlichen Vorschriften, und es entscheidet eine zugelassene Fachperson für Vermessung oder Ingenieurwesen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>How this was computed</source>
   <translation>So wurde gerechnet</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>Which shape was built?</source>
   <translation>Welche Form wurde gebaut?</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>shape</source>
   <translation>Form</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>RMS</source>
   <translation>RMS</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>degrees of freedom</source>
   <translation>Freiheitsgrade</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>what it is</source>
   <translation>Bedeutung</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>Heights of {} less their mean, over chainage, with four curves: level, constant grade, straight in space, and curvature left free. Curvature factor {}, 95 percent between {} and {}. {}</source>
   <translation>Höhen von {} minus Mittel über der Stationierung, mit vier Kurven: niveaugleich, konstante Neigung, gerade im Raum und freie Krümmung. Krümmungsfaktor {}, 95 Prozent zwischen {} und {}. {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>Above: the heights less their mean, with the shapes fitted to them. Below: the curvature factor; the bar contains the true value in 95 of 100 cases. {} stations over {}.</source>
   <translation>Oben: die Höhen minus Mittel mit den eingepassten Formen. Unten: der Krümmungsfaktor; der Balken enthält in 95 von 100 Fällen den wahren Wert. {} Stationen auf {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>Set aside by the test: {}.</source>
   <translation>Vom Test ausgesondert: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>a constant height</source>
   <translation>eine konstante Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>a constant slope above the level surface; the same curve as a straight line with no curvature</source>
   <translation>eine konstante Neigung über der Niveaufläche; dieselbe Kurve wie eine Gerade ohne Erdkrümmung</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>straight in space</source>
   <translation>gerade im Raum</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>straight, by the 8-inch rule (8 inches per mile squared)</source>
   <translation>gerade, nach der 8-Zoll-Regel (8 Zoll mal Meilen zum Quadrat)</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>straight, over a sphere</source>
   <translation>gerade, über einer Kugel</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>curvature left free</source>
   <translation>Krümmung freigegeben</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>The page needs matplotlib in QGIS's own Python (python3-matplotlib on Debian and Ubuntu); leave HTML empty to go without.</source>
   <translation>Die Seite braucht matplotlib im Python von QGIS (python3-matplotlib unter Debian und Ubuntu); HTML leer lassen, um darauf zu verzichten.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>level</source>
   <translation>niveaugleich</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>constant grade</source>
   <translation>konstante Neigung</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>as built, 95 %</source>
   <translation>Ist, 95 %</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>set aside</source>
   <translation>ausgesondert</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>height less the mean, {}</source>
   <translation>Höhe minus Mittel, {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>0: constant grade</source>
   <translation>0: konstante Neigung</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>1: straight in space</source>
   <translation>1: gerade im Raum</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_page.py" />
   <source>curvature factor with its 95 % interval</source>
   <translation>Krümmungsfaktor mit seinem 95-%-Intervall</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_run.py" />
   <source>Nothing can be tested: no axis or leg has at least {} stations with heights.</source>
   <translation>Nichts lässt sich testen: Keine Achse und kein Abschnitt hat mindestens {} Stationen mit Höhe.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_run.py" />
   <source>Curvature of each axis</source>
   <translation>Krümmung jeder Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_run.py" />
   <source>Axis '{}' has {} stations with heights; a test needs {}.</source>
   <translation>Achse '{}': {} Station(en) mit Höhe; ein Test braucht {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_run.py" />
   <source>{}, leg {}</source>
   <translation>{}, Abschnitt {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_run.py" />
   <source>{} has {} stations with heights; a leg needs {}.</source>
   <translation>{}: {} Station(en) mit Höhe; ein Abschnitt braucht {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_sentences.py" />
   <source>curvature factor {} ± {} (95 %)</source>
   <translation>Krümmungsfaktor {} ± {} (95 %)</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_sentences.py" />
   <source>{} bends on average like a straight line in space ({}), but does not follow one: {}.</source>
   <translation>{} krümmt sich im Mittel wie eine Gerade im Raum ({}), folgt ihr aber nicht: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_sentences.py" />
   <source>{} follows the level surface on average, at a constant grade of {} ({}), but not from station to station: {}.</source>
   <translation>{} folgt im Mittel der Niveaufläche, mit konstanter Neigung von {} ({}), aber nicht von Station zu Station: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_sentences.py" />
   <source>Nor do the heights follow one curve: {}.</source>
   <translation>Auch folgen die Höhen keiner gemeinsamen Kurve: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_sentences.py" />
   <source>chi squared {}, limit {}</source>
   <translation>Chi-Quadrat {}, Grenze {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_sentences.py" />
   <source>neighbours depart from it together</source>
   <translation>benachbarte Stationen weichen gemeinsam ab</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_sentences.py" />
   <source>departures to ±{} near {} ({})</source>
   <translation>Abweichungen bis ±{} nahe {} ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_sentences.py" />
   <source>{} is straight in space: {}, where 1 is straight and 0 follows the level surface.</source>
   <translation>{} ist gerade im Raum: {}; 1 ist gerade, 0 folgt der Niveaufläche.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_sentences.py" />
   <source>{} follows the level surface at a constant grade of {}: {}, where 1 is straight and 0 follows the level surface.</source>
   <translation>{} folgt der Niveaufläche mit konstanter Neigung von {}: {}; 1 ist gerade, 0 folgt der Niveaufläche.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_sentences.py" />
   <source>{} is neither straight in space nor at a constant grade above the level surface: {}, and its 95 % interval holds neither 1 nor 0.</source>
   <translation>{} ist weder gerade im Raum noch von konstanter Neigung über der Niveaufläche: {}, und das 95-%-Intervall enthält weder 1 noch 0.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_sentences.py" />
   <source>a length of {} with the same spacing and accuracy</source>
   <translation>Länge von {} bei gleichem Stationsabstand und gleicher Genauigkeit</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_sentences.py" />
   <source>heights good to {}, or </source>
   <translation>Höhen auf {} genau oder </translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_sentences.py" />
   <source>Whether {} is straight or level is undecided: {}, and its 95 % interval holds both 1 and 0. {}{} would decide.</source>
   <translation>Ob {} gerade oder niveaugleich ist, bleibt offen: {}, und das 95-%-Intervall enthält sowohl 1 als auch 0. Zur Entscheidung nötig: {}{}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_sentences.py" />
   <source>Implied radius: above {} km, on either side, or level (the Earth's along this axis is {} km).</source>
   <translation>Abgeleiteter Radius: über {} km, nach oben oder unten, oder niveaugleich (Erdradius entlang dieser Achse: {} km).</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_sentences.py" />
   <source>Implied radius: {} km, 95 % between {} and {} km (the Earth's along this axis is {} km).</source>
   <translation>Abgeleiteter Radius: {} km, 95 % zwischen {} und {} km (Erdradius entlang dieser Achse: {} km).</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/curvature_sentences.py" />
   <source>Standard deviation of the factor: {} from the heights, {} from the bending of the geoid.</source>
   <translation>Standardabweichung des Faktors: {} aus den Höhen, {} aus der Geoidkrümmung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>Understood: {} of layer '{}' and {}; heights from {} in {}, chainages in {}.</source>
   <translation>Verstanden: {} aus Layer '{}' und {}; Höhen: {} in {}, Stationierung in {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>Axis '{}': the axis layer overrides {}.</source>
   <translation>Achse '{}': Der Achslayer hat Vorrang bei: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>{} more: see the summary.</source>
   <translation>Weitere {}: siehe Zusammenfassung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>REFERENCE is given, but not used, since no axis has the design 'reference'.</source>
   <translation>REFERENCE ist angegeben, wird aber nicht verwendet, da keine Achse den Entwurf 'reference' hat.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>GRAVITY is given, but not used, since no axis has the design 'level'.</source>
   <translation>GRAVITY ist angegeben, wird aber nicht verwendet, da keine Achse den Entwurf 'level' hat.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>GEOID_SLOPE_SIGMA is given, but not used: no slope of the geoid is stated.</source>
   <translation>GEOID_SLOPE_SIGMA ist angegeben, wird aber nicht verwendet: Es ist keine Geoidneigung angegeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>A slope of the geoid is stated, but not used: no axis has the design tangent or inclined.</source>
   <translation>Eine Geoidneigung ist angegeben, wird aber nicht verwendet: Keine Achse hat den Entwurf tangent oder inclined.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>The stated slope of the geoid ({}) changes no design height: heights above the geoid count from its horizon already.</source>
   <translation>Die angegebene Geoidneigung ({}) ändert keine Soll-Höhe: Höhen über dem Geoid zählen bereits von dessen Horizont.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>The horizon leans with the stated slope of the geoid: {}</source>
   <translation>Der Horizont neigt sich mit der angegebenen Geoidneigung: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>; its standard deviation of {}″ is {} at the station farthest from the control</source>
   <translation>; ihre Standardabweichung von {}″ macht {} an der vom Zwangspunkt entferntesten Station aus</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>Axis '{}': no station belongs to it.</source>
   <translation>Achse '{}': Keine Station gehört zu ihr.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>Axis '{}': {} from {} to {}, chainage height {} ({}). {}</source>
   <translation>Achse '{}': {} von {} bis {}, Stationierungshöhe {} ({}). {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>Axis '{}': no station has an as-built height, so there are design heights only.</source>
   <translation>Achse '{}': Keine Station hat eine Ist-Höhe, daher gibt es nur Soll-Höhen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>Axis '{}': {}, RMS {}, greatest {} at {}</source>
   <translation>Achse '{}': {}, RMS {}, größte {} bei {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>residual</source>
   <translation>Abweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>residuals</source>
   <translation>Abweichungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>; {} within {}, {} high, {} low</source>
   <translation>; {} innerhalb {}, {} zu hoch, {} zu tief</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>; {} without an as-built height</source>
   <translation>; {} ohne Ist-Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source> Curvature effect {} to {}.</source>
   <translation> Krümmungseinfluss {} bis {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>typed, on the axis</source>
   <translation>eingegeben, auf der Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>as built at a station</source>
   <translation>Ist-Höhe einer Station</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>control {} at {}, height {} ({})</source>
   <translation>Zwangspunkt {} bei {}, Höhe {} ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>slope {}</source>
   <translation>Neigung {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>horizon of the geoid</source>
   <translation>Horizont des Geoids</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>horizon of the ellipsoid</source>
   <translation>Horizont des Ellipsoids</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>refraction k = {}</source>
   <translation>Refraktion k = {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>Earth model: {}, for comparison only</source>
   <translation>Erdmodell: {}, nur zum Vergleich</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>water in normal gravity on GRS 80, {}</source>
   <translation>Wasser im Normalschwerefeld des GRS 80, {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>heights taken as above the sea</source>
   <translation>Höhen gelten als über dem Meer</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>the datum {} above the sea</source>
   <translation>Bezugshöhe {} über dem Meer</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>Design {}: {}.</source>
   <translation>Entwurf {}: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>as the reference</source>
   <translation>wie der Bezug</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>station lies</source>
   <translation>Station liegt</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>stations lie</source>
   <translation>Stationen liegen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>Axis '{}': a constant ellipsoidal height is not a level surface; water and instruments follow the geoid.</source>
   <translation>Achse '{}': Eine konstante ellipsoidische Höhe ist keine Niveaufläche; Wasser und Instrumente folgen dem Geoid.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>Axis '{}': the design '{}' does not use {}.</source>
   <translation>Achse '{}': Der Entwurf '{}' verwendet nicht: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_messages.py" />
   <source>Axis '{}': by normal gravity still water departs from this constant height by up to {}, more than a tenth of the tolerance (heights taken as above the sea); GRAVITY 'normal' follows it.</source>
   <translation>Achse '{}': Nach der Normalschwere weicht ruhendes Wasser von dieser konstanten Höhe um bis zu {} ab, mehr als ein Zehntel der Toleranz (Höhen gelten als über dem Meer); GRAVITY 'normal' folgt ihm.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_run.py" />
   <source>Residuals</source>
   <translation>Abweichungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/design_run.py" />
   <source>Summary of residuals</source>
   <translation>Übersicht der Abweichungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_geoid.py" />
   <source>GEOID_SLOPE_SIGMA is missing: a stated slope of the geoid needs its standard deviation, without which the ellipses of the points would be guessed.</source>
   <translation>GEOID_SLOPE_SIGMA fehlt: Eine angegebene Geoidneigung braucht ihre Standardabweichung, sonst wären die Ellipsen der Punkte geraten.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_geoid.py" />
   <source>GEOID_SLOPE_SIGMA is negative.</source>
   <translation>GEOID_SLOPE_SIGMA ist negativ.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_messages.py" />
   <source>Understood: {} stations of layer '{}' and {}; heights from {} in {}; {}.</source>
   <translation>Verstanden: {} Stationen aus Layer '{}' und {}; Höhen: {} in {}; {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_messages.py" />
   <source>The errors of the heights are taken as independent; heights levelled along an axis share errors, so give SIGMA_KM for ellipses and intervals that hold.</source>
   <translation>Die Fehler der Höhen gelten als unabhängig; entlang einer Achse nivellierte Höhen haben Fehler gemeinsam, daher für zutreffende Ellipsen und Intervalle SIGMA_KM angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_messages.py" />
   <source>{} more with nothing suspected: see the reference layer.</source>
   <translation>{} weitere ohne Verdacht: siehe Bezugslayer.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_messages.py" />
   <source>1 axis</source>
   <translation>1 Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_messages.py" />
   <source>{} axes</source>
   <translation>{} Achsen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_messages.py" />
   <source>{} '{}': {} stations on {}, RMS {}{}; {}.</source>
   <translation>{} '{}': {} Stationen auf {}, RMS {}{}; {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_messages.py" />
   <source>{} '{}': slope at the origin of {}, against {}{}; height {}{} at its point.</source>
   <translation>{} '{}': Neigung am Ursprung: {} gegen {}{}; Höhe {}{} im Bezugspunkt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_messages.py" />
   <source>, 95 %</source>
   <translation>, 95 %</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_messages.py" />
   <source>1 axis does</source>
   <translation>1 Achse trifft</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_messages.py" />
   <source>{} axes do</source>
   <translation>{} Achsen treffen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_messages.py" />
   <source>{} '{}': {} not meet the others within 10 m; a height unknown was added for each.</source>
   <translation>{} '{}': {} die anderen nicht innerhalb von 10 m; für jede wurde eine unbekannte Höhe hinzugefügt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_messages.py" />
   <source>Line '{}': straightness, RMS and range: vertical {} and {}, lateral {} and {}; combined RMS {}, greatest {}.</source>
   <translation>Linie '{}': Geradheit, RMS und Spannweite: vertikal {} und {}, seitlich {} und {}; kombiniert RMS {}, größte {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_messages.py" />
   <source>Line '{}': minimum zone (ISO 12780-1; ISO 1101), the least that holds all stations kept: vertical {}, lateral {}, cylinder {} in diameter.</source>
   <translation>Linie '{}': Minimumzone (ISO 12780-1; ISO 1101), die kleinste mit allen behaltenen Stationen: vertikal {}, seitlich {}, Zylinder {} im Durchmesser.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_messages.py" />
   <source>the ellipsoid's horizon</source>
   <translation>den Horizont des Ellipsoids</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_messages.py" />
   <source>the level surface</source>
   <translation>die Niveaufläche</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_run.py" />
   <source>Tested stations</source>
   <translation>Getestete Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_run.py" />
   <source>Reference</source>
   <translation>Bezug</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_run.py" />
   <source>Tangent and level points, 95 % ellipses</source>
   <translation>Berühr- und Horizontalpunkte, 95-%-Ellipsen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fit_run.py" />
   <source>Layer '{}': {} belong to the residuals of an earlier run and are left out.</source>
   <translation>Layer '{}': {} gehören zu den Abweichungen eines früheren Laufs und entfallen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fitted_lines.py" />
   <source>LINE 'fitted' goes with FIT 'line': a plane has no line in plan. Choose one or leave LINE empty.</source>
   <translation>LINE 'fitted' gehört zu FIT 'line': Eine Ebene hat keine Linie im Grundriss. Eines wählen oder LINE leer lassen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/fitted_lines.py" />
   <source>standard deviation not stated, estimated from the departures</source>
   <translation>Standardabweichung nicht angegeben, aus den Querabweichungen geschätzt</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/height_accuracies.py" />
   <source>{} is {}; it must be positive.</source>
   <translation>{} ist {}; der Wert muss positiv sein.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/height_accuracies.py" />
   <source>standard deviation {} for all</source>
   <translation>Standardabweichung {} für alle</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/height_accuracies.py" />
   <source>missing</source>
   <translation>nicht vorhanden</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/height_accuracies.py" />
   <source>Layer '{}', row {}: the standard deviation in the field '{}' is {}; it must be positive.</source>
   <translation>Layer '{}', Zeile {}: Die Standardabweichung im Feld '{}' ist {}; sie muss positiv sein.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/height_accuracies.py" />
   <source>standard deviations from the field '{}'</source>
   <translation>Standardabweichungen aus dem Feld '{}'</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/height_accuracies.py" />
   <source>covariance of the heights from the layer '{}'</source>
   <translation>Kovarianz der Höhen aus dem Layer '{}'</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/height_accuracies.py" />
   <source>standard deviations from a field</source>
   <translation>Standardabweichungen aus einem Feld</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/height_accuracies.py" />
   <source>SIGMA_KM needs the standard deviation of a height too: give SIGMA or SIGMA_FIELD.</source>
   <translation>SIGMA_KM braucht auch die Standardabweichung einer Höhe: SIGMA oder SIGMA_FIELD angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/height_accuracies.py" />
   <source>standard deviation not stated, estimated from the residuals</source>
   <translation>Standardabweichung nicht angegeben, aus den Abweichungen geschätzt</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/line_messages.py" />
   <source>Axis '{}': line from {}: {}, RMS {}, greatest {} at {}</source>
   <translation>Achse '{}', Linie ist {}: {}, RMS {}, größte {} bei {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/line_messages.py" />
   <source>; {} within {}, {} left, {} right</source>
   <translation>; {} innerhalb {}, {} links, {} rechts</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/line_messages.py" />
   <source>; {} without a height, taken at the design height</source>
   <translation>; {} ohne Höhe, auf der Soll-Höhe angenommen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/line_messages.py" />
   <source>the vertical plane that fits {} stations best</source>
   <translation>die Vertikalebene, die sich {} Stationen am besten anpasst</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/line_messages.py" />
   <source>the vertical plane through its stations {} and {}</source>
   <translation>die Vertikalebene durch die Stationen {} und {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/line_messages.py" />
   <source>A tolerance of the line is given, but not used, since no axis has a LINE.</source>
   <translation>Eine Toleranz der Linie ist angegeben, wird aber nicht verwendet, da keine Achse eine LINE hat.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/line_messages.py" />
   <source>LINE 'axis' stands on the axis as drawn in layer '{}': it judges the line only where that axis was surveyed or designed. An axis drawn by hand on imagery is no basis for judging; 'chord' and 'fitted' need the stations alone.</source>
   <translation>LINE 'axis' beruht auf der Achse, wie sie in Layer '{}' gezeichnet ist: Die Linie wird nur beurteilt, wo diese Achse vermessen oder entworfen ist. Nach einer von Hand auf Luftbildern gezeichneten Achse lässt sich nichts beurteilen; 'chord' und 'fitted' brauchen nur die Stationen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/line_messages.py" />
   <source>Axis '{}' bends: its vertices lie up to {} beside the vertical plane of LINE '{}', which is straight; judge each leg by itself, or by LINE 'axis'.</source>
   <translation>Achse '{}' ist geknickt: Ihre Stützpunkte liegen bis zu {} neben der Vertikalebene von LINE '{}', die gerade ist; jeden Abschnitt für sich beurteilen oder nach LINE 'axis'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>chord: straight between two controls. tangent: straight, level at one control. inclined: straight, rising by SLOPE at one control. reference: a fitted or fixed plane. level: follows the level surface. grade: constant slope above the level surface, or from A to B where SLOPE is empty.</source>
   <translation>chord (Sehne): gerade zwischen zwei Zwangspunkten. tangent (Tangente): gerade, in einem Zwangspunkt horizontal. inclined (geneigte Gerade): gerade, in einem Zwangspunkt mit SLOPE steigend. reference (Bezug): eine ausgleichende oder feste Ebene. level (niveaugleich): folgt der Niveaufläche. grade (konstante Neigung): konstante Neigung über der Niveaufläche, oder von A nach B, wenn SLOPE leer ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Chainage of control {}</source>
   <translation>Stationierung Zwangspunkt {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>A distance or a station such as 12+50. Empty: found from the stations that have a height: the first for A (tangent: nearest to the middle), the last for B.</source>
   <translation>Eine Entfernung oder eine Station wie 12+50. Leer: aus den Stationen mit Höhe, die erste für A (tangent: die der Mitte nächste), die letzte für B.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Height of control {}</source>
   <translation>Höhe Zwangspunkt {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Design height there, for example 3742.600. Empty: the as-built height of the station nearest to that chainage, at most 1 m away, so that its residual is 0.</source>
   <translation>Soll-Höhe dort, zum Beispiel 3742.600. Leer: die Ist-Höhe der nächsten Station, höchstens 1 m entfernt, sodass deren Abweichung 0 ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Rise of the design height per chainage at control A, without unit: 0.003 for 3 mm per metre, which is 0.3 percent. For the designs inclined and grade.</source>
   <translation>Anstieg der Soll-Höhe je Stationierung im Zwangspunkt A, ohne Einheit: 0.003 für 3 mm je Meter, also 0,3 Prozent. Für die Entwürfe inclined und grade.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Layer with the planes for the design 'reference': fields name, lat0, lon0, h0, nx, ny, nz, h_system, undul. Its name matches an axis; a single row serves all axes.</source>
   <translation>Layer mit den Ebenen für den Entwurf 'reference': Felder name, lat0, lon0, h0, nx, ny, nz, h_system, undul. Der Name gehört zu einer Achse; eine einzige Zeile gilt für alle Achsen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Share of the curvature effect that refraction takes away from a line of sight: 0 for a structure, 0.13 is usual by day over land for a sight, and it can be negative near warm ground. 0.13 takes away 10 of the 78 mm of the first kilometre.</source>
   <translation>Anteil des Krümmungseinflusses, den die Refraktion bei einer Visur wegnimmt: 0 bei einem Bauwerk; 0.13 ist bei Visuren tagsüber über Land üblich, über warmem Boden kann der Wert negativ sein. 0.13 nimmt 10 von 78 mm des ersten Kilometers weg.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Earth model</source>
   <translation>Erdmodell</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>ellipsoid: exact. sphere, and flat (no curvature): for comparison only.</source>
   <translation>ellipsoid (Ellipsoid): exakt. sphere (Kugel) und flat (ohne Erdkrümmung): nur zum Vergleich.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Greatest residual that counts as within, in the unit of heights: 0.01 in metres is 10 mm. Empty: no status within, high or low is given.</source>
   <translation>Größte Abweichung, die noch als within gilt, in der Höheneinheit: 0.01 in Metern sind 10 mm. Leer: kein Status within, high oder low.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>What the line in plan is judged by, beside the height. Empty or none: not at all. axis: the offset from the axis as drawn, which must be surveyed or designed; an axis drawn by hand on imagery is no basis for judging. chord: the vertical plane through the stations at the design's two controls, else through the first and the last station. fitted: the vertical plane that fits the stations best. Adds the fields lateral (positive is right, looking up-chainage) and side.</source>
   <translation>Wonach die Linie im Grundriss neben der Höhe beurteilt wird. Leer oder none (keine): gar nicht. axis (Achse): der Querabstand von der Achse wie gezeichnet, die vermessen oder entworfen sein muss; nach einer von Hand auf Luftbildern gezeichneten Achse lässt sich nichts beurteilen. chord (Sehne): die Vertikalebene durch die Stationen in den beiden Zwangspunkten des Entwurfs, sonst durch die erste und letzte Station. fitted (eingepasst): die Vertikalebene, die sich den Stationen am besten anpasst. Ergänzt die Felder lateral (positiv ist rechts, in Stationierungsrichtung gesehen) und side.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Greatest lateral departure that counts as within, in the unit of heights: 0.01 in metres is 10 mm to each side. Empty: no side within, left or right is given.</source>
   <translation>Größte Querabweichung, die noch als within gilt, in der Höheneinheit: 0.01 in Metern sind 10 mm nach jeder Seite. Leer: keine Seite within, left oder right.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Whether the line in plan is fitted and tested beside the heights, with FIT 'line'. Empty or none: not at all. fitted: the vertical plane that fits the stations best. Adds the fields lateral (positive is right, looking up-chainage), lat_w, lat_redund, lat_blund and lat_flag, and the line's position, azimuth and tests to the reference.</source>
   <translation>Ob die Linie im Grundriss neben den Höhen ausgeglichen und getestet wird, mit FIT 'line'. Leer oder none (keine): gar nicht. fitted (eingepasst): die Vertikalebene, die sich den Stationen am besten anpasst. Ergänzt die Felder lateral (positiv ist rechts, in Stationierungsrichtung gesehen), lat_w, lat_redund, lat_blund und lat_flag sowie Lage, Azimut und Tests der Linie im Bezug.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Across the line, one value for all stations, in the unit of heights; at 0.002 departures from about 0.0066 on are suspected. Empty: from a field, else estimated from the lateral departures.</source>
   <translation>Quer zur Linie, ein Wert für alle Stationen, in der Höheneinheit; bei 0.002 gelten Querabweichungen ab etwa 0,0066 als verdächtig. Leer: aus einem Feld, sonst aus den Querabweichungen geschätzt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Field with the standard deviation of the lateral positions</source>
   <translation>Feld mit der Standardabweichung der seitlichen Lagen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>In the unit of heights; 'Measure chainage and offset' gives it from those of east and north. Empty: SIGMA_LINE, else a field 'sd_line', else the accuracy is estimated from the departures.</source>
   <translation>In der Höheneinheit; 'Stationierung und Querabstand messen' bestimmt sie aus denen in Ost und Nord. Leer: SIGMA_LINE, sonst ein Feld 'sd_line', sonst wird die Genauigkeit aus den Querabweichungen geschätzt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Field with the heights' standard deviation</source>
   <translation>Feld mit der Standardabweichung der Höhen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>In the unit of heights. Empty: SIGMA, else a field 'sd', else the accuracy is estimated from the residuals.</source>
   <translation>In der Höheneinheit. Leer: SIGMA, sonst ein Feld 'sd', sonst wird die Genauigkeit aus den Abweichungen geschätzt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>One value for all stations, in the unit of heights: 0.003 in metres where a height is good to 3 mm. Empty: from a field, else estimated.</source>
   <translation>Ein Wert für alle Stationen, in der Höheneinheit: 0.003 in Metern, wo eine Höhe auf 3 mm genau ist. Leer: aus einem Feld, sonst geschätzt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Of the levelling as used; where a section was levelled once, the value quoted for double levelling times 1.41, so that 0.5 becomes 0.7. Heights levelled along an axis share errors, at 0.7 and 4 km 1.4 mm; an ellipse that ignores this holds the truth far less often than the 95 % that it states.</source>
   <translation>Des Nivellements, wie es verwendet wird; wo eine Strecke nur einfach nivelliert ist, der für das Doppelnivellement angegebene Wert mal 1,41, sodass aus 0,5 dann 0,7 wird. Entlang einer Achse nivellierte Höhen haben Fehler gemeinsam, bei 0,7 und 4 km 1,4 mm; eine Ellipse, die das übergeht, enthält den wahren Wert weit seltener als in den angegebenen 95 %.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Covariance of the heights</source>
   <translation>Kovarianz der Höhen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Table that 'Adjust levelled height differences' writes: fields point and covar. It has precedence over SIGMA_FIELD and SIGMA_KM; SIGMA, where given, is that of a height apart from the levelling and is added; where it is empty, a point held fixed gets 0.1 mm. Empty: the table that the record of the stations' layer names, if any.</source>
   <translation>Tabelle, die 'Nivellierte Höhenunterschiede ausgleichen' schreibt: Felder point und covar. Sie hat Vorrang vor SIGMA_FIELD und SIGMA_KM; SIGMA, falls angegeben, ist die Standardabweichung einer Höhe, abgesehen vom Nivellement, und kommt hinzu; bleibt es leer, erhält ein festgehaltener Punkt 0,1 mm. Leer: die Tabelle, die das Laufprotokoll des Stationslayers nennt, falls vorhanden.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Field with the station's name</source>
   <translation>Feld mit dem Namen der Station</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Finds each station in COVARIANCE. Empty: a field 'point', 'name' or 'station'.</source>
   <translation>Findet jede Station in COVARIANCE. Leer: ein Feld 'point', 'name' oder 'station'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Fit</source>
   <translation>Ausgleich</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>line: for each axis, or each leg of a bent one. plane: one for each group of axes, counting a common corner once.</source>
   <translation>line (Gerade): für jede Achse oder jeden Abschnitt einer geknickten. plane (Ebene): eine für jede Gruppe von Achsen; eine gemeinsame Ecke zählt einmal.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Field that names the group, in the axis layer</source>
   <translation>Feld mit dem Gruppennamen im Achslayer</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Axes of one group share a plane. Empty: a field 'group', else all axes are one group.</source>
   <translation>Achsen einer Gruppe haben eine gemeinsame Ebene. Leer: ein Feld 'group', sonst sind alle Achsen eine Gruppe.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Robust start</source>
   <translation>Robuster Start</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Begin the search for blunders from a robust fit (Huber): for many suspects, or where a stretch of the structure has moved and no standard deviation is given. Works only where suspected blunders are set aside.</source>
   <translation>Die Suche nach groben Fehlern mit einer robusten Ausgleichung (Huber) beginnen: bei vielen Verdachtsfällen oder wenn sich eine Strecke des Bauwerks bewegt hat und keine Standardabweichung angegeben ist. Wirkt nur, wo vermutete grobe Fehler ausgesondert werden.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Set suspected blunders aside</source>
   <translation>Vermutete grobe Fehler aussondern</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>One by one, the greatest first; each is listed and stays in the output. Off: they are only flagged.</source>
   <translation>Einer nach dem anderen, der größte zuerst; jeder wird aufgeführt und bleibt in der Ausgabe. Aus: Sie werden nur markiert.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Slope of the geoid to the east (seconds of arc)</source>
   <translation>Geoidneigung nach Osten (Bogensekunden)</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>east</source>
   <translation>Ost</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Slope of the geoid to the north (seconds of arc)</source>
   <translation>Geoidneigung nach Norden (Bogensekunden)</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>north</source>
   <translation>Nord</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Rise of the undulation N towards the {}, at the structure, where the project knows its deflection of the vertical: the slope is the deflection's component {} with the opposite sign. It sets horizon, level point and tangent point. Not with UNDULATION 'field' or 'grid', which bring a slope of their own. 5 seconds raise N by 73 mm in 3 km.</source>
   <translation>Anstieg der Undulation N in Richtung {} am Bauwerk, wo das Projekt seine Lotabweichung kennt: Die Neigung ist die Lotabweichungskomponente {} mit umgekehrtem Vorzeichen. Sie bestimmt Horizont, Horizontalpunkt und Berührpunkt. Nicht mit UNDULATION 'field' oder 'grid', die eine eigene Neigung mitbringen. 5 Bogensekunden heben N um 73 mm auf 3 km.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Standard deviation of the geoid's slope (seconds of arc)</source>
   <translation>Standardabweichung der Geoidneigung (Bogensekunden)</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>For each component; one second is 31 m of the point that needs the slope. Empty: 4 for EGM96, 2.5 for grids of 5 minutes or finer and for a field of undulations, 8 where nothing is known. Needed with a stated slope.</source>
   <translation>Für jede Komponente; eine Bogensekunde verschiebt den Punkt, der die Neigung braucht, um 31 m. Leer: 4 für EGM96, 2,5 für Gitter von 5 Bogenminuten oder feiner und für ein Feld mit Undulationen, 8, wo nichts bekannt ist. Nötig bei angegebener Neigung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Share of the geoid's bending</source>
   <translation>Anteil der Geoidkrümmung</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/parameters.py" />
   <source>Standard deviation that the bending of the geoid adds to the curvature factor. Empty: 0.04 at 3 km, less for longer structures, half where a fine grid of undulations is applied.</source>
   <translation>Standardabweichung, die die Geoidkrümmung zum Krümmungsfaktor beiträgt. Leer: 0,04 bei 3 km, weniger bei längeren Bauwerken, die Hälfte, wo ein feines Undulationsgitter verwendet wird.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/plan_messages.py" />
   <source>Line in plan: {}. The lateral errors are taken as independent of each other and of the heights; points of one setup share errors, and a step between two setups looks like a stretch that has moved.</source>
   <translation>Linie im Grundriss: {}. Die seitlichen Fehler gelten als unabhängig voneinander und von den Höhen; Punkte einer Aufstellung haben Fehler gemeinsam, und ein Sprung zwischen zwei Aufstellungen sieht wie eine bewegte Strecke aus.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/plan_messages.py" />
   <source>{} '{}': {} stations, RMS {}{}; {}.</source>
   <translation>{} '{}': {} Stationen, RMS {}{}; {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/plan_messages.py" />
   <source>{} '{}': azimuth {}°{} at its middle{}{}.</source>
   <translation>{} '{}': Azimut {}°{} in der Mitte{}{}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/plan_messages.py" />
   <source>, lateral position{}</source>
   <translation>, seitliche Lage{}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>tangent point, where it touches along the ellipsoid</source>
   <translation>Berührpunkt, in dem sie parallel zum Ellipsoid liegt</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>level point, where it lies in the horizon and water on it would stand still</source>
   <translation>Horizontalpunkt, in dem sie im Horizont liegt und Wasser darauf stehen bliebe</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>tangent to the ellipsoid at</source>
   <translation>tangential zum Ellipsoid bei</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>level, against the horizon, at</source>
   <translation>horizontal, gegen den Horizont, bei</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>{} {}, {} the surveyed stretch</source>
   <translation>{} {}, {} des gemessenen Bereichs</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>inside</source>
   <translation>innerhalb</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>outside</source>
   <translation>außerhalb</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>, standard deviation {}</source>
   <translation>, Standardabweichung {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>Line '{}': {}. On both sides of the level point the straight line rises above the level surface.</source>
   <translation>Linie '{}': {}. Beiderseits des Horizontalpunkts steigt die Gerade über die Niveaufläche.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>Plane '{}': {}: poorly determined; neither its position nor an ellipse is given.</source>
   <translation>Ebene '{}': {}: schlecht bestimmt; weder Lage noch Ellipse werden angegeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>inside the area that the stations span</source>
   <translation>innerhalb der von den Stationen umschlossenen Fläche</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>outside the area that the stations span, {} from the nearest one</source>
   <translation>außerhalb der von den Stationen umschlossenen Fläche, {} von der nächsten</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>Plane '{}': {}: latitude {}°, longitude {}°, {}; semi-axes of its 95 % ellipse {} and {}.</source>
   <translation>Ebene '{}': {}: Breite {}°, Länge {}°, {}; Halbachsen der 95-%-Ellipse {} und {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>Plane '{}': seen from the axes: {}.</source>
   <translation>Ebene '{}': von den Achsen aus gesehen: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>Plane</source>
   <translation>Ebene</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>as stated: {}</source>
   <translation>wie angegeben: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>from the stations' own undulations: {}</source>
   <translation>aus den Undulationen der Stationen selbst: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>from the grid: {}</source>
   <translation>aus dem Gitter: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>from EGM96: {}</source>
   <translation>aus EGM96: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>not known to this run, taken as none</source>
   <translation>diesem Lauf nicht bekannt, als null angenommen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>level point</source>
   <translation>Horizontalpunkt</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>tangent point</source>
   <translation>Berührpunkt</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>{} '{}': the {} needs the slope of the geoid, {}, with a standard deviation of {}″ for each component; the {} rests on the heights alone.</source>
   <translation>{} '{}': Der {} braucht die Geoidneigung, {}, mit einer Standardabweichung von {}″ je Komponente; der {} beruht allein auf den Höhen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source> The grid ends near the points, so the slope among the stations stands in.</source>
   <translation> Das Gitter endet nahe den Punkten, daher gilt ersatzweise die Neigung zwischen den Stationen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source> Bending of the geoid is allowed for.</source>
   <translation> Die Geoidkrümmung ist berücksichtigt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source> The grid shows how the geoid bends.</source>
   <translation> Das Gitter zeigt, wie sich das Geoid krümmt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>right</source>
   <translation>rechts</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>left</source>
   <translation>links</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/point_messages.py" />
   <source>{} {}, {} to the {}</source>
   <translation>{} {}, {} {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/reference_groups.py" />
   <source>{} '{}': {}</source>
   <translation>{} '{}': {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/reference_groups.py" />
   <source>Axis '{}': no station with a height belongs to it.</source>
   <translation>Achse '{}': Keine Station mit Höhe gehört zu ihr.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/reference_groups.py" />
   <source>Axis '{}': 1 station with a height; a line needs 2 and was not fitted.</source>
   <translation>Achse '{}': 1 Station mit Höhe; eine Linie braucht 2 und wurde nicht eingepasst.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/reference_groups.py" />
   <source>{}: {} stations with heights; a leg needs {} and was not fitted.</source>
   <translation>{}: Stationen mit Höhe: {}; ein Abschnitt braucht {} und wurde nicht eingepasst.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/reference_groups.py" />
   <source>common plane</source>
   <translation>gemeinsame Ebene</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/reference_groups.py" />
   <source>Nothing can be fitted: no axis or leg has enough stations with heights.</source>
   <translation>Nichts kann eingepasst werden: Keine Achse und kein Abschnitt hat genügend Stationen mit Höhe.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>no redundant station is left to estimate the accuracy of a height</source>
   <translation>keine überzählige Station bleibt, um die Genauigkeit einer Höhe zu schätzen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>standard deviation of one height estimated as {}</source>
   <translation>Standardabweichung einer Höhe geschätzt zu {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>{} '{}': more than {} of {} stations would have to be set aside as blunders, so none was: these heights do not have the shape of one plane within their standard deviations. Check heights, units and standard deviations, or test which shape was built. Flagged as they stand: {}.</source>
   <translation>{} '{}': Mehr als {} von {} Stationen wären als grobe Fehler auszusondern, daher wurde keine ausgesondert: Diese Höhen haben innerhalb ihrer Standardabweichungen nicht die Form einer einzigen Ebene. Höhen, Einheiten und Standardabweichungen prüfen oder testen, welche Form gebaut wurde. Markiert nach jetzigem Stand: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>{} '{}': more than {} of {} stations would have to be set aside as blunders, so none was: these heights do not have the shape of one straight line within their standard deviations. Check heights, units and standard deviations, or test which shape was built. Flagged as they stand: {}.</source>
   <translation>{} '{}': Mehr als {} von {} Stationen wären als grobe Fehler auszusondern, daher wurde keine ausgesondert: Diese Höhen haben innerhalb ihrer Standardabweichungen nicht die Form einer einzigen Geraden. Höhen, Einheiten und Standardabweichungen prüfen oder testen, welche Form gebaut wurde. Markiert nach jetzigem Stand: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>{} '{}': {} neighbours from {} to {} of '{}' lie high, residuals {} to {}: that looks like a stretch that has moved, not like blunders. Look at the profile{}.</source>
   <translation>{} '{}': {} benachbarte Stationen von {} bis {} auf '{}' liegen zu hoch, Abweichungen {} bis {}: Das spricht für eine bewegte Strecke, nicht für grobe Fehler. Den Längsschnitt ansehen{}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>{} '{}': {} neighbours from {} to {} of '{}' lie low, residuals {} to {}: that looks like a stretch that has moved, not like blunders. Look at the profile{}.</source>
   <translation>{} '{}': {} benachbarte Stationen von {} bis {} auf '{}' liegen zu tief, Abweichungen {} bis {}: Das spricht für eine bewegte Strecke, nicht für grobe Fehler. Den Längsschnitt ansehen{}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>{} '{}': more than a tenth of the stations is flagged; that looks like deformation or another shape, not like blunders. Test which shape was built{}.</source>
   <translation>{} '{}': Mehr als ein Zehntel der Stationen ist markiert; das spricht für eine Deformation oder eine andere Form, nicht für grobe Fehler. Testen, welche Form gebaut wurde{}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>Line in plan</source>
   <translation>Linie im Grundriss</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>no redundant station is left to estimate the accuracy of a lateral position</source>
   <translation>keine überzählige Station bleibt, um die Genauigkeit einer seitlichen Lage zu schätzen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>standard deviation of one lateral position estimated as {}</source>
   <translation>Standardabweichung einer seitlichen Lage geschätzt zu {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>{} '{}': more than {} of {} stations would have to be set aside as blunders, so none was: these positions do not have the shape of one straight line within their standard deviations. Check positions, units and standard deviations, and the vertices of the axis. Flagged as they stand: {}.</source>
   <translation>{} '{}': Mehr als {} von {} Stationen wären als grobe Fehler auszusondern, daher wurde keine ausgesondert: Diese Lagen haben innerhalb ihrer Standardabweichungen nicht die Form einer einzigen Geraden. Lagen, Einheiten und Standardabweichungen sowie die Stützpunkte der Achse prüfen. Markiert nach jetzigem Stand: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>{} '{}': {} neighbours from {} to {} of '{}' lie right, by {} to {}: that looks like a stretch that has moved, not like blunders. Look at them in plan{}.</source>
   <translation>{} '{}': {} benachbarte Stationen von {} bis {} auf '{}' liegen rechts, um {} bis {}: Das spricht für eine bewegte Strecke, nicht für grobe Fehler. Im Grundriss ansehen{}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>{} '{}': {} neighbours from {} to {} of '{}' lie left, by {} to {}: that looks like a stretch that has moved, not like blunders. Look at them in plan{}.</source>
   <translation>{} '{}': {} benachbarte Stationen von {} bis {} auf '{}' liegen links, um {} bis {}: Das spricht für eine bewegte Strecke, nicht für grobe Fehler. Im Grundriss ansehen{}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>{} '{}': more than a tenth of the stations is flagged; that looks like deformation or a bend in plan, not like blunders. Look at them in plan{}.</source>
   <translation>{} '{}': Mehr als ein Zehntel der Stationen ist markiert; das spricht für eine Deformation oder einen Knick im Grundriss, nicht für grobe Fehler. Im Grundriss ansehen{}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>, {} set aside</source>
   <translation>, {} ausgesondert</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>no redundant station is left for a test</source>
   <translation>für einen Test bleibt keine überzählige Station</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>global test {}: {} between {} and {}</source>
   <translation>Globaltest {}: {} zwischen {} und {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>global test {}: {} not between {} and {}</source>
   <translation>Globaltest {}: {} nicht zwischen {} und {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>passed</source>
   <translation>bestanden</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>failed</source>
   <translation>nicht bestanden</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>; with the accuracy that the residuals show, intervals are {} times as wide</source>
   <translation>; mit der Genauigkeit, die sich aus den Abweichungen ergibt, sind Intervalle {}-mal so breit</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>{} of '{}'</source>
   <translation>{} auf '{}'</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>{} to {} of '{}' ({})</source>
   <translation>{} bis {} auf '{}' ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>{} '{}': too few redundant stations to test for blunders.</source>
   <translation>{} '{}': Für einen Test auf grobe Fehler gibt es zu wenige überzählige Stationen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>, and try the robust start (ROBUST)</source>
   <translation>, auch mit robustem Start (ROBUST) versuchen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>{} '{}': {} and {} cannot be told apart; neither is set aside.</source>
   <translation>{} '{}': {} und {} lassen sich nicht unterscheiden; keine wird ausgesondert.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>{} '{}': no blunder is suspected; the smallest that would be found at a typical station is {}.</source>
   <translation>{} '{}': Kein grober Fehler vermutet; der kleinste, der an einer typischen Station aufgedeckt würde, ist {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>{} '{}': suspected blunder at {} of '{}', residual {}, w = {}{}.</source>
   <translation>{} '{}': vermuteter grober Fehler bei {} auf '{}', Abweichung {}, w = {}{}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>, set aside</source>
   <translation>, ausgesondert</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/search_messages.py" />
   <source>{} '{}': a step is suspected in the levelling of '{}', from {} on (T = {}, limit {}): a blunder of the section, for which no station is set aside.</source>
   <translation>{} '{}': Im Nivellement von '{}' wird ein Sprung vermutet, ab {} (T = {}, Grenze {}): ein grober Fehler der Nivellementstrecke, für den keine Station ausgesondert wird.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design/surveyed_heights.py" />
   <source>Layer '{}': no station on an axis has a height.</source>
   <translation>Layer '{}': Keine Station auf einer Achse hat eine Höhe.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>Computes for each station of a long structure the height it should have under the stated design on the real ellipsoid and geoid, and how far the as-built height is from it.

Two layers are enough: points with heights and a line for the axis; the design is then the chord from the first to the last station. A straight structure is not level: a chord lies below the level surface between its ends, by 20 mm in the middle of a kilometre, and a tangent rises above it on both sides of its tangent point, by 78 mm at a kilometre. The column curv_eff shows by how much.

An axis layer with a field 'design' states the design of each axis itself and overrides this form; the log says so.

LINE judges the line in plan as well: lateral is the distance from it, positive is right.

Residual is as-built minus design, positive is built high; adjust is its opposite, positive is raise. Stations without a height get a design height too, for setting out.

Results are for review. Field work follows local codes, and a licensed surveyor or engineer decides.</source>
   <translation>Berechnet für jede Station eines langen Bauwerks die Höhe, die sie nach dem angegebenen Entwurf auf dem wirklichen Ellipsoid und Geoid haben soll, und wie weit die Ist-Höhe davon abweicht.

Zwei Layer genügen: Punkte mit Höhen und eine Linie für die Achse; der Entwurf ist dann die Sehne von der ersten zur letzten Station. Ein gerades Bauwerk ist nicht niveaugleich: Eine Sehne liegt zwischen ihren Enden unter der Niveaufläche, in der Mitte eines Kilometers um 20 mm, und eine Tangente steigt beiderseits ihres Berührpunkts darüber, bei einem Kilometer um 78 mm. Die Spalte curv_eff zeigt, um wie viel.

Ein Achslayer mit einem Feld 'design' gibt den Entwurf jeder Achse selbst an und hat Vorrang vor diesem Formular; das Protokoll nennt es.

LINE beurteilt auch die Linie im Grundriss: lateral ist der Abstand von ihr, positiv ist rechts.

Die Abweichung ist Ist minus Soll, positiv ist zu hoch gebaut; adjust ist ihr Gegenteil, positiv ist heben. Auch Stationen ohne Höhe erhalten eine Soll-Höhe, zum Abstecken.

Die Ergebnisse dienen der Prüfung. Für Arbeiten vor Ort gelten die örtlichen Vorschriften, und es entscheidet eine zugelassene Fachperson für Vermessung oder Ingenieurwesen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>Design heights and residuals</source>
   <translation>Soll-Höhen und Abweichungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>as-built</source>
   <translation>Ist-Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>chord</source>
   <translation>Sehne</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>curvature</source>
   <translation>Erdkrümmung</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>design</source>
   <translation>Entwurf</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>grade</source>
   <translation>Neigung</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>line</source>
   <translation>Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>straight</source>
   <translation>gerade</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>tangent</source>
   <translation>Tangente</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>Stations farther from every axis stay in the output with the status 'off axis'.</source>
   <translation>Stationen, die von jeder Achse weiter entfernt sind, bleiben mit dem Status 'off axis' in der Ausgabe.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>For the design 'level': a surface of still water, whose heights fall towards the poles. Empty: as the run that made the stations, else none.</source>
   <translation>Für den Entwurf 'level': eine Fläche ruhenden Wassers, deren Höhen zu den Polen hin abnehmen. Leer: wie im Lauf, der die Stationen erzeugt hat, sonst none.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>Stations with residuals</source>
   <translation>Stationen mit Abweichungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>The stations with design height, residual, adjustment, curvature effect and status. A residual of -0.021 in metres is 21 mm low.</source>
   <translation>Die Stationen mit Soll-Höhe, Abweichung, Korrektur, Krümmungseinfluss und Status. Eine Abweichung von -0,021 in Metern ist 21 mm zu tief.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>Summary of each axis</source>
   <translation>Zusammenfassung je Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>A row for each axis: design and controls used, RMS, greatest residual and where, numbers within, high and low.</source>
   <translation>Eine Zeile je Achse: verwendeter Entwurf und Zwangspunkte, RMS, größte Abweichung und deren Ort, Anzahlen innerhalb, zu hoch und zu tief.</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>Stations with a residual</source>
   <translation>Stationen mit Abweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>Stations within tolerance</source>
   <translation>Stationen innerhalb der Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/design_heights.py" />
   <source>Stations within the line's tolerance</source>
   <translation>Stationen in der Linientoleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/bars.py" />
   <source>Residual bars</source>
   <translation>Abweichungsbalken</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/bars.py" />
   <source>Lateral bars</source>
   <translation>Seitliche Balken</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/bars.py" />
   <source>Axis '{}': the tolerance band is wider than its bends allow and folds over itself; give a smaller EXAGGERATION.</source>
   <translation>Achse '{}': Das Toleranzband ist breiter, als ihre Knicke zulassen, und überschneidet sich selbst; eine kleinere EXAGGERATION angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/bars.py" />
   <source>No tolerance is known, so BAND is empty; give TOLERANCE.</source>
   <translation>Keine Toleranz ist bekannt, daher ist BAND leer; TOLERANCE angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/bars.py" />
   <source>Tolerance band</source>
   <translation>Toleranzband</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/bars.py" />
   <source>No station of layer '{}' has a residual, so there are no bars.</source>
   <translation>Keine Station des Layers '{}' hat eine Abweichung, daher gibt es keine Balken.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/bars.py" />
   <source>{} at {} of axis '{}'</source>
   <translation>{} bei {} auf Achse '{}'</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/bars.py" />
   <source>The longest bar drawn whole stands for {}; it is {} m long.</source>
   <translation>Der längste ungekürzte Balken steht für {}; er ist {} m lang.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/bars.py" />
   <source>{} cut at {} m, with a mark: {}. {} {} would show all whole.</source>
   <translation>{} bei {} m gekürzt und markiert: {}. {} {} würde alle ganz zeigen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/bars.py" />
   <source>bar is</source>
   <translation>Balken ist</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/bars.py" />
   <source>bars are</source>
   <translation>Balken sind</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/bars.py" />
   <source>Lateral bars are dashed and drawn {}: {} m stand for {}. Each points to where its station stands.</source>
   <translation>Seitliche Balken sind gestrichelt und mit Überhöhung {} gezeichnet: {} m stehen für {}. Jeder zeigt dorthin, wo seine Station liegt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/bars.py" />
   <source>Bars are drawn {} on the ground: {} m stand for {}. High is to the {}.</source>
   <translation>Balken sind mit Überhöhung {} gezeichnet: {} m in der Natur stehen für {}. Zu hoch zeigt nach {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/deviations_run.py" />
   <source>Layer '{}' has no lateral departures (fields 'lateral' and 'side') to draw as {}; run 'Design heights and residuals' with LINE first.</source>
   <translation>Layer '{}' enthält keine Querabweichungen (Felder 'lateral' und 'side') für {}; zuerst 'Soll-Höhen und Abweichungen' mit LINE ausführen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/deviations_run.py" />
   <source>Understood: {} of layer '{}' on {}; heights in {}, chainages in {}.</source>
   <translation>Verstanden: {} aus Layer '{}' auf {}; Höhen in {}, Stationierung in {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/deviations_run.py" />
   <source>{} is {}, but must be above 0; leave it empty for the automatic value.</source>
   <translation>{} ist {}, muss aber über 0 liegen; leer lassen für den automatischen Wert.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/drawn_axes.py" />
   <source>Layer '{}' has no field '{}'; run 'Design heights and residuals' first and give its output.</source>
   <translation>Layer '{}' hat kein Feld '{}'; zuerst 'Soll-Höhen und Abweichungen' ausführen und dessen Ausgabe angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/drawn_axes.py" />
   <source>Layer '{}' has no station with a residual on an axis; nothing can be drawn.</source>
   <translation>Layer '{}' hat auf keiner Achse eine Station mit Abweichung; nichts kann gezeichnet werden.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/drawn_axes.py" />
   <source>Layer '{}', field 'chainage', row {}: {} {} is not where axis '{}' has this station; check CHAINAGE_UNIT and the direction of the axis, or compute the residuals again.</source>
   <translation>Layer '{}', Feld 'chainage', Zeile {}: {} {} ist nicht die Stelle, an der Achse '{}' diese Station hat; CHAINAGE_UNIT und die Richtung der Achse prüfen oder die Abweichungen neu berechnen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/drawn_axes.py" />
   <source>{} no as-built height</source>
   <translation>{} keine Ist-Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/drawn_axes.py" />
   <source>station has</source>
   <translation>Station hat</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/drawn_axes.py" />
   <source>stations have</source>
   <translation>Stationen haben</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/drawn_axes.py" />
   <source>{} off axis</source>
   <translation>{} abseits der Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/drawn_axes.py" />
   <source>Not drawn: {}.</source>
   <translation>Nicht gezeichnet: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>Output of 'Design heights and residuals': its fields residual, chainage, design_h and flat_h are used.</source>
   <translation>Ausgabe von 'Soll-Höhen und Abweichungen': Verwendet werden die Felder residual, chainage, design_h und flat_h.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>Half the width of the band, in the unit of heights: 0.01 in metres, drawn 10,000 times larger, reaches 100 m to each side. Empty: that of the run that computed the stations. A field 'tolerance' of an axis layer with designs overrides it.</source>
   <translation>Halbe Breite des Bandes, in der Höheneinheit: 0.01 in Metern, 10 000-fach überhöht, reicht 100 m nach jeder Seite. Leer: die des Laufs, der die Stationen berechnet hat. Ein Feld 'tolerance' eines Achslayers mit Entwürfen hat Vorrang.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>Exaggeration of the bars</source>
   <translation>Überhöhung der Balken</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>How many times larger than in truth a residual is drawn on the ground: with 10000 a bar of 10 m stands for 1 mm. Empty: a round number by which an ordinary large residual, or the tolerance, takes up to a twentieth of the structure's length.</source>
   <translation>Wievielmal größer als in Wirklichkeit eine Abweichung in der Natur gezeichnet wird: Mit 10000 steht ein Balken von 10 m für 1 mm. Leer: eine runde Zahl, bei der eine üblich große Abweichung oder die Toleranz bis zu einem Zwanzigstel der Bauwerkslänge einnimmt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>Side of stations built high</source>
   <translation>Seite der zu hohen Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>Bars of stations built high point to this side of the axis looking up-chainage, those built low to the other.</source>
   <translation>Balken zu hoch gebauter Stationen zeigen nach dieser Seite der Achse, right (rechts) oder left (links), in Stationierungsrichtung gesehen, die zu tief gebauter nach der anderen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>Longest bar (metres)</source>
   <translation>Längster Balken (Meter)</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>Length on the ground beyond which a bar is cut and marked. Empty: a sixth of the structure's length, 433 of 2,600 m.</source>
   <translation>Länge in der Natur, ab der ein Balken gekürzt und markiert wird. Leer: ein Sechstel der Bauwerkslänge, 433 von 2600 m.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>Strip shows heights from</source>
   <translation>Streifen zeigt Höhen ab</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>level: from the level surface, where a straight structure is a curve. straight: from the straight line of the design, where the level surface is the curve. The heights are the same.</source>
   <translation>level (niveaugleich): von der Niveaufläche aus, wo ein gerades Bauwerk eine Kurve ist. straight (gerade): von der Geraden des Entwurfs aus, wo die Niveaufläche die Kurve ist. Die Höhen sind dieselben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>Side of the strip</source>
   <translation>Seite des Streifens</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>Looking up-chainage. automatic: away from the other axes; of one axis alone, where the bars are shorter.</source>
   <translation>In Stationierungsrichtung gesehen. left (links), right (rechts), automatic (automatisch): abgewandt von den anderen Achsen; bei einer einzigen Achse dort, wo die Balken kürzer sind.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>Distance of the strip from the axis (metres)</source>
   <translation>Abstand Streifen zur Achse (Meter)</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>On the ground, from the axis to the strip's datum line, for example 300. Empty: clear of bars and band.</source>
   <translation>In der Natur, von der Achse zur Bezugslinie des Streifens, zum Beispiel 300. Leer: frei von Balken und Band.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>Exaggeration of the strip</source>
   <translation>Überhöhung des Streifens</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>With 500 a height of 200 mm is drawn 100 m high. Empty: a round number by which the highest strip takes up to a sixth of the structure's length.</source>
   <translation>Mit 500 wird eine Höhe von 200 mm 100 m hoch gezeichnet. Leer: eine runde Zahl, bei der der höchste Streifen bis zu einem Sechstel der Bauwerkslänge einnimmt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>Limits in the plan strip, in the unit of heights: 0.01 in metres, drawn 5,000 times larger, is 50 m to each side of its line. Empty: that of the run that computed the stations. A field 'line_tol' of an axis layer with designs overrides it.</source>
   <translation>Grenzen im Grundrissstreifen, in der Höheneinheit: 0.01 in Metern, 5000-fach überhöht, sind 50 m nach jeder Seite seiner Linie. Leer: die des Laufs, der die Stationen berechnet hat. Ein Feld 'line_tol' eines Achslayers mit Entwürfen hat Vorrang.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>Exaggeration of the lateral bars</source>
   <translation>Überhöhung der seitlichen Balken</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>With 2000 a bar of 10 m stands for 5 mm beside the line. Empty: a round number found as that of the residual bars is, from the lateral departures.</source>
   <translation>Mit 2000 steht ein Balken von 10 m für 5 mm neben der Linie. Leer: eine runde Zahl, bestimmt wie die der Abweichungsbalken, aus den Querabweichungen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>Exaggeration across the plan strip</source>
   <translation>Überhöhung quer im Grundrissstreifen</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/parameters.py" />
   <source>Along the axis the strip is true to scale. With 5000 a departure of 12 mm is drawn 60 m from the strip's line. Empty: a round number by which the widest strip takes up to a sixth of the structure's length.</source>
   <translation>Entlang der Achse ist der Streifen maßstäblich. Mit 5000 wird eine Querabweichung von 12 mm 60 m neben der Linie des Streifens gezeichnet. Leer: eine runde Zahl, bei der der breiteste Streifen bis zu einem Sechstel der Bauwerkslänge einnimmt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/plan.py" />
   <source>Plan strip</source>
   <translation>Grundrissstreifen</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/plan.py" />
   <source>Axis '{}': no plan strip; it needs lateral departures at two stations some way apart.</source>
   <translation>Achse '{}': kein Grundrissstreifen; nötig sind Querabweichungen an zwei etwas auseinanderliegenden Stationen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/plan.py" />
   <source>as built</source>
   <translation>Ist</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/plan.py" />
   <source>tolerance</source>
   <translation>Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/plan.py" />
   <source>{}: plan, across the line {}</source>
   <translation>{}: Grundriss, quer zur Linie {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/plan.py" />
   <source>, tolerance ±{}</source>
   <translation>, Toleranz ±{}</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/plan.py" />
   <source>Axis '{}': plan strip on the {}, true to scale along the axis and {} across it; its scale bar stands for {}. Right of the line is drawn right, looking up-chainage.</source>
   <translation>Achse '{}': Grundrissstreifen {}, entlang der Achse maßstäblich und quer dazu {}; sein Maßstabsbalken steht für {}. Rechts der Linie ist rechts gezeichnet, in Stationierungsrichtung gesehen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/plan.py" />
   <source>Axis '{}': stations far from the line leave the plan strip and are cut at its edge.</source>
   <translation>Achse '{}': Stationen weit neben der Linie verlassen den Grundrissstreifen und sind an seinem Rand abgeschnitten.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/plan.py" />
   <source>Axis '{}': the plan strip folds over itself at a bend; draw it on the other side.</source>
   <translation>Achse '{}': Der Grundrissstreifen überschneidet sich selbst an einem Knick; auf der anderen Seite zeichnen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/strip.py" />
   <source>Profile strip</source>
   <translation>Längsschnittstreifen</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/strip.py" />
   <source>Axis '{}': no strip; it needs design heights at two stations some way apart.</source>
   <translation>Achse '{}': kein Streifen; nötig sind Soll-Höhen an zwei etwas auseinanderliegenden Stationen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/strip.py" />
   <source>{} more have a strip of the same scale.</source>
   <translation>Weitere {} mit einem Streifen desselben Maßstabs.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/strip.py" />
   <source>{}: heights {} above level {}</source>
   <translation>{}: Höhen {} über Niveau {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/strip.py" />
   <source>{}: heights {} from the design</source>
   <translation>{}: Höhen {} ab Entwurf</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/strip.py" />
   <source>no curvature</source>
   <translation>ohne Erdkrümmung</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/strip.py" />
   <source>Axis '{}': strip on the {}, {} m from the axis, heights drawn {}; its scale bar stands for {}. Level line: constant height {} through the design at {}.</source>
   <translation>Achse '{}': Streifen {}, {} m von der Achse, Höhen {} überhöht; sein Maßstabsbalken steht für {}. Niveaulinie: konstante Höhe {} durch den Entwurf bei {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/strip.py" />
   <source>Axis '{}': the heights are ellipsoidal, so the level line follows the ellipsoid and is not a water surface.</source>
   <translation>Achse '{}': Die Höhen sind ellipsoidisch, daher folgt die Niveaulinie dem Ellipsoid und ist keine Wasserfläche.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/strip.py" />
   <source>Axis '{}': the design slopes so much that the level line leaves the strip; it is cut at the edge.</source>
   <translation>Achse '{}': Der Entwurf ist so stark geneigt, dass die Niveaulinie den Streifen verlässt; sie ist am Rand abgeschnitten.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/strip.py" />
   <source>Axis '{}': as-built heights far from the design leave the strip and are cut at its edge; the bars and the table have them.</source>
   <translation>Achse '{}': Ist-Höhen weit neben dem Entwurf verlassen den Streifen und sind an seinem Rand abgeschnitten; die Balken und die Tabelle enthalten sie.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/strip.py" />
   <source>Axis '{}': the design's slope hides its curvature here; VIEW 'straight' shows it.</source>
   <translation>Achse '{}': Die Neigung des Entwurfs verdeckt hier seine Krümmung; VIEW 'straight' zeigt sie.</translation>
  </message>
  <message>
   <location filename="../../algorithms/deviations/strip.py" />
   <source>Axis '{}': the strip folds over itself at a bend; draw it on the other side or nearer.</source>
   <translation>Achse '{}': Der Streifen überschneidet sich selbst an einem Knick; auf der anderen Seite oder näher zeichnen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/documents/blocks.py" />
   <source>For review. Field work follows local codes, and a licensed surveyor or engineer decides what is raised, lowered or left.</source>
   <translation>Zur Prüfung. Für Arbeiten vor Ort gelten die örtlichen Vorschriften, und eine zugelassene Fachperson für Vermessung oder Ingenieurwesen entscheidet, was gehoben, gesenkt oder belassen wird.</translation>
  </message>
  <message>
   <location filename="../../algorithms/documents/html.py" />
   <source>HTML pages need jinja2 in QGIS's own Python (python3-jinja2 on Debian and Ubuntu); leave the page empty to go without.</source>
   <translation>HTML-Seiten brauchen jinja2 im Python von QGIS (python3-jinja2 unter Debian und Ubuntu); die Seite leer lassen, um darauf zu verzichten.</translation>
  </message>
  <message>
   <location filename="../../algorithms/documents/pdf.py" />
   <source>The PDF could not be written.</source>
   <translation>Das PDF konnte nicht geschrieben werden.</translation>
  </message>
  <message>
   <location filename="../../algorithms/documents/pdf.py" />
   <source>signature, date</source>
   <translation>Unterschrift, Datum</translation>
  </message>
  <message>
   <location filename="../../algorithms/documents/pdf.py" />
   <source>Caution</source>
   <translation>Warnhinweis</translation>
  </message>
  <message>
   <location filename="../../algorithms/documents/pdf_pages.py" />
   <source>page {} of {}</source>
   <translation>Seite {} von {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/documents/pdf_pages.py" />
   <source>For review, not for setting out.</source>
   <translation>Zur Prüfung, nicht zum Abstecken.</translation>
  </message>
  <message>
   <location filename="../../algorithms/documents/pdf_tables.py" />
   <source>… (cut)</source>
   <translation>… (gekürzt)</translation>
  </message>
  <message>
   <location filename="../../algorithms/draw_deviations.py" />
   <source>Draw deviations on the map</source>
   <translation>Abweichungen in der Karte darstellen</translation>
  </message>
  <message>
   <location filename="../../algorithms/draw_deviations.py" />
   <source>Draws what 'Design heights and residuals' has found, over any map. Give its output and the same axis.

Bars stand across the axis at each station and are as long as the residual, exaggerated: 10,000 times larger, 1 mm is 10 m. The band shows the tolerance with the same exaggeration: a bar that leaves it is out of tolerance. The strip beside the axis is a profile with a scale bar of its own: as-built heights, the design, the level line through the design's first station, and the design with no curvature. Heights grow away from the axis.

Stations that were judged in line too can have lateral bars, dashed and in a colour of their own, and a plan strip: true to scale along the axis, exaggerated across it, with the tolerance of the line.

All is drawn in metres on the ground, whatever the coordinate reference system. Bars that would be too long are cut and marked; the table has the true value.

Results are for review. Field work follows local codes, and a licensed surveyor or engineer decides.</source>
   <translation>Zeichnet auf eine beliebige Karte, was 'Soll-Höhen und Abweichungen' ermittelt hat. Dessen Ausgabe und dieselbe Achse angeben.

Balken stehen an jeder Station quer zur Achse und sind so lang wie die überhöhte Abweichung: 10 000-fach ist 1 mm 10 m lang. Das Band zeigt die Toleranz mit derselben Überhöhung: Ein Balken, der darüber hinausreicht, liegt außerhalb der Toleranz. Der Streifen neben der Achse ist ein Längsschnitt mit eigenem Maßstabsbalken: Ist-Höhen, Entwurf, Niveaulinie durch die erste Station des Entwurfs und Entwurf ohne Erdkrümmung. Die Höhen wachsen von der Achse weg.

Auch zur Linie beurteilte Stationen können seitliche Balken erhalten, gestrichelt und in eigener Farbe, und einen Grundrissstreifen: entlang der Achse maßstäblich, quer dazu überhöht, mit der Toleranz der Linie.

Alles ist in Metern in der Natur gezeichnet, unabhängig vom Koordinatenbezugssystem. Zu lange Balken werden gekürzt und markiert; die Tabelle enthält den wahren Wert.

Die Ergebnisse dienen der Prüfung. Für Arbeiten vor Ort gelten die örtlichen Vorschriften, und es entscheidet eine zugelassene Fachperson für Vermessung oder Ingenieurwesen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/draw_deviations.py" />
   <source>bars</source>
   <translation>Balken</translation>
  </message>
  <message>
   <location filename="../../algorithms/draw_deviations.py" />
   <source>exaggeration</source>
   <translation>Überhöhung</translation>
  </message>
  <message>
   <location filename="../../algorithms/draw_deviations.py" />
   <source>map</source>
   <translation>Karte</translation>
  </message>
  <message>
   <location filename="../../algorithms/draw_deviations.py" />
   <source>plan</source>
   <translation>Grundriss</translation>
  </message>
  <message>
   <location filename="../../algorithms/draw_deviations.py" />
   <source>profile</source>
   <translation>Längsschnitt</translation>
  </message>
  <message>
   <location filename="../../algorithms/draw_deviations.py" />
   <source>review</source>
   <translation>Prüfung</translation>
  </message>
  <message>
   <location filename="../../algorithms/draw_deviations.py" />
   <source>A line across the axis for each station; its field residual holds the true value, also where the bar is cut.</source>
   <translation>Eine Linie quer zur Achse für jede Station; ihr Feld residual enthält den wahren Wert, auch wo der Balken gekürzt ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/draw_deviations.py" />
   <source>The tolerance on both sides of the axis, with the exaggeration of the bars: 10 mm drawn 10,000 times larger is 100 m.</source>
   <translation>Die Toleranz beiderseits der Achse, mit der Überhöhung der Balken: 10 mm, 10 000-fach gezeichnet, sind 100 m.</translation>
  </message>
  <message>
   <location filename="../../algorithms/draw_deviations.py" />
   <source>The profile beside the axis as lines: as-built, design, level line, design with no curvature, scale bar.</source>
   <translation>Der Längsschnitt neben der Achse als Linien: Ist, Entwurf, Niveaulinie, Entwurf ohne Erdkrümmung, Maßstabsbalken.</translation>
  </message>
  <message>
   <location filename="../../algorithms/draw_deviations.py" />
   <source>For stations with the fields lateral and side, from a run with LINE: a dashed line across the axis for each, to the side on which it stands.</source>
   <translation>Für Stationen mit den Feldern lateral und side aus einem Lauf mit LINE: je eine gestrichelte Linie quer zur Achse nach der Seite, auf der die Station liegt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/draw_deviations.py" />
   <source>For the same stations: the line seen from above, beside the axis and beyond the profile strip, as lines: as-built, line, tolerance, scale bar.</source>
   <translation>Für dieselben Stationen: die Linie von oben gesehen, neben der Achse und jenseits des Längsschnittstreifens, als Linien: Ist, Linie, Toleranz, Maßstabsbalken.</translation>
  </message>
  <message>
   <location filename="../../algorithms/draw_deviations.py" />
   <source>Bars</source>
   <translation>Balken</translation>
  </message>
  <message>
   <location filename="../../algorithms/draw_deviations.py" />
   <source>Bars that are cut</source>
   <translation>Gekürzte Balken</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/edited_heights.py" />
   <source>Layer '{}': the height of {} is not design height plus residual, the first in row {} ({}): it was changed after the run; 'Design heights and residuals' on this layer computes anew.</source>
   <translation>Layer '{}': die Höhe von {} ist nicht Soll-Höhe plus Abweichung, zuerst in Zeile {} ({}): sie wurde nach dem Lauf geändert; 'Soll-Höhen und Abweichungen' mit diesem Layer rechnet neu.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/edited_heights.py" />
   <source>Layer '{}': the height of {} was changed since its run, the first in row {}.</source>
   <translation>Layer '{}': die Höhe von {} wurde seit dem Lauf geändert, zuerst in Zeile {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/moved_points.py" />
   <source>Chainage, offset and what was computed there are those of the former place; 'Measure chainage and offset' or 'Design heights and residuals' on this layer measures anew.</source>
   <translation>Stationierung, Querabstand und was dort berechnet wurde gelten für den früheren Ort; 'Stationierung und Querabstand messen' oder 'Soll-Höhen und Abweichungen' mit diesem Layer misst neu.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/moved_points.py" />
   <source>point was moved or added</source>
   <translation>Punkt wurde</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/moved_points.py" />
   <source>points were moved or added</source>
   <translation>Punkte wurden</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/moved_points.py" />
   <source>Layer '{}': {} since its run, the first in row {}.</source>
   <translation>Layer '{}': {} seit seinem Lauf verschoben oder ergänzt, zuerst in Zeile {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameter_checks.py" />
   <source>{}: no layer can be read from {}; check the path.</source>
   <translation>{}: Aus {} ist kein Layer lesbar; den Pfad prüfen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameter_checks.py" />
   <source>There is no parameter {}; there are {}.</source>
   <translation>Einen Parameter {} gibt es nicht; vorhanden: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameter_checks.py" />
   <source>{} is the place of the input {} ({}); choose another, or the input would be lost.</source>
   <translation>{} ist der Ort der Eingabe {} ({}); einen anderen wählen, sonst ginge die Eingabe verloren.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameter_checks.py" />
   <source>{} and {} are the same place ({}); choose different files or tables.</source>
   <translation>{} und {} sind derselbe Ort ({}); verschiedene Dateien oder Tabellen wählen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Points of the structure whose heights were surveyed.</source>
   <translation>Punkte des Bauwerks, deren Höhen gemessen wurden.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Points</source>
   <translation>Punkte</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Any points: surveyed stations, targets, supports.</source>
   <translation>Beliebige Punkte: gemessene Stationen, Zielpunkte, Auflager.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Height list</source>
   <translation>Höhenliste</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>A table with a station and a height in each row, for example a CSV file. Points are taken too; their own positions are not used.</source>
   <translation>Eine Tabelle mit einer Station und einer Höhe in jeder Zeile, zum Beispiel eine CSV-Datei. Auch Punkte sind möglich; ihre eigene Lage wird nicht verwendet.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>design, chain_a, height_a, chain_b, height_b, slope, tolerance, chain_h and chain_0</source>
   <translation>design, chain_a, height_a, chain_b, height_b, slope, tolerance, chain_h und chain_0</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>tolerance, chain_h and chain_0</source>
   <translation>tolerance, chain_h und chain_0</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>chain_h (chainage height) and chain_0 (chainage of the first vertex)</source>
   <translation>chain_h (Stationierungshöhe) und chain_0 (Stationierung des ersten Stützpunkts)</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Line of the structure in plan, one feature for each axis, drawn in the direction of rising chainage. Where it has a field 'design', its fields {} override this form for that axis.</source>
   <translation>Linie des Bauwerks im Grundriss, ein Objekt je Achse, gezeichnet in Richtung steigender Stationierung. Wo sie ein Feld 'design' hat, haben ihre Felder {} für diese Achse Vorrang vor diesem Formular.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Field that names the axis, in the axis layer</source>
   <translation>Feld mit dem Achsnamen im Achslayer</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Empty: a field 'axis' or 'name', else the feature's number.</source>
   <translation>Leer: ein Feld 'axis' oder 'name', sonst die Nummer des Objekts.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Field that names the axis, at the stations</source>
   <translation>Feld mit dem Achsnamen bei den Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Empty: a field such as axis, arm or line, else each station belongs to the nearest axis.</source>
   <translation>Leer: ein Feld wie axis, arm oder line, sonst gehört jede Station zur nächsten Achse.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Field with the station</source>
   <translation>Feld mit der Station</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Station notation such as 12+50 (stations of 100) or 1+250 (of 1000), or a distance. Empty: a field such as station, sta or chainage.</source>
   <translation>Stationsangabe wie 12+50 (Stationen zu 100) oder 1+250 (zu 1000) oder eine Entfernung. Leer: ein Feld wie station, sta oder chainage.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Field with the offset</source>
   <translation>Feld mit dem Querabstand</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Distance from the axis, positive to the right looking up-chainage: -0.35 is 0.35 to the left. Empty: a field such as offset, else 0.</source>
   <translation>Abstand von der Achse, nach rechts positiv, in Stationierungsrichtung gesehen: -0.35 ist 0,35 nach links. Leer: ein Feld wie offset, sonst 0.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Decimal sign</source>
   <translation>Dezimalzeichen</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Of the numbers in the list. Empty: each column tells; one that leaves it open, such as 1,345 throughout, is refused.</source>
   <translation>Der Zahlen in der Liste: point (Punkt) oder comma (Komma). Leer: Jede Spalte zeigt es; eine, die es offen lässt, etwa mit durchweg 1,345, wird abgelehnt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Empty: a field 'height', else the point's Z, else a field such as elevation, elev, level or rl.</source>
   <translation>Leer: ein Feld 'height', sonst das Z des Punktes, sonst ein Feld wie elevation, elev, level oder rl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Empty: a column such as height, elevation, elev, level or rl, with or without its unit.</source>
   <translation>Leer: eine Spalte wie height, elevation, elev, level oder rl, mit oder ohne Einheit.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Field with the as-built height</source>
   <translation>Feld mit der Ist-Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Unit of heights in and out: metre, international foot, or US survey foot; the two feet are 2 mm apart in 1,000 m. Tolerance, typed undulations and residuals are in it too. Empty: as the record of the layer says, or the heading of the heights ('Elev (ft)', height_ft), else metre, and the log says so.</source>
   <translation>Einheit der Höhen in Ein- und Ausgabe: metre (Meter), foot (Fuß, international) oder us_foot (US-Vermessungsfuß); die beiden Fuß unterscheiden sich um 2 mm auf 1000 m. Auch Toleranz, eingegebene Undulationen und Abweichungen stehen in dieser Einheit. Leer: wie im Laufprotokoll des Layers oder in der Überschrift der Höhen ('Elev (ft)', height_ft), sonst Meter, und das Protokoll nennt es.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Unit of chainages and offsets</source>
   <translation>Einheit der Stationierung</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Empty: as the record of the layer says, or a heading, else as the heights.</source>
   <translation>Leer: wie im Laufprotokoll des Layers oder in einer Überschrift, sonst wie die Höhen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Greatest distance from the axis (metres)</source>
   <translation>Größter Abstand von der Achse (Meter)</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Stations farther from every axis take no part; the log names them.</source>
   <translation>Stationen, die von jeder Achse weiter entfernt sind, nehmen nicht teil; das Protokoll nennt sie.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Chainage of the axis' first vertex</source>
   <translation>Stationierung des ersten Achsstützpunkts</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>A distance or a station such as 10+00. Empty: 0.</source>
   <translation>Eine Entfernung oder eine Station wie 10+00. Leer: 0.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Ellipsoidal height at which chainages are measured, in the unit of heights: a structure at height is longer than its projection on the ellipsoid, a kilometre at 1,000 m by 157 mm. Empty: the median height of the axis' stations, rounded to 1 m; give it, so that two surveys get the same chainages. Where undulations are not known, heights above the geoid stand in: 0.16 mm in a kilometre for each metre.</source>
   <translation>Ellipsoidische Höhe, in der die Stationierung gemessen wird, in der Höheneinheit: Ein Bauwerk in der Höhe ist länger als seine Projektion auf das Ellipsoid, ein Kilometer in 1000 m um 157 mm. Leer: die mittlere Höhe (Median) der Stationen der Achse, auf 1 m gerundet; angeben, damit zwei Messungen dieselbe Stationierung erhalten. Wo Undulationen nicht bekannt sind, treten Höhen über dem Geoid an ihre Stelle: 0,16 mm auf einen Kilometer für jeden Meter.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Station equations</source>
   <translation>Fehlstationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Pairs back=ahead in order, separated by semicolons. With 12+50=13+00 the point that is 12+50 from behind is 13+00 from there on. One axis only.</source>
   <translation>Paare rückwärts=vorwärts in Reihenfolge, durch Semikolon getrennt. Mit 12+50=13+00 ist der Punkt, der von hinten 12+50 ist, von dort an 13+00. Nur bei einer einzigen Achse.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>What the heights are: 'ellipsoidal'; or above the geoid, with the undulation from a 'field', a 'grid' or one 'constant'; 'unknown' takes heights above the geoid for ellipsoidal ones, and the log says so. Empty or 'unknown': as the record of the layer says, if it does. A reference system of the stations whose vertical part says otherwise is refused.</source>
   <translation>Was die Höhen sind: 'ellipsoidal' (ellipsoidisch); oder über dem Geoid, mit der Undulation aus einem 'field' (Feld), einem 'grid' (Gitter) oder einem Wert 'constant' (konstant); 'unknown' (unbekannt) behandelt Höhen über dem Geoid als ellipsoidische, und das Protokoll nennt es. Leer oder 'unknown': wie im Laufprotokoll des Layers, falls es etwas nennt. Ein Bezugssystem der Stationen, dessen Höhenteil anderes besagt, wird abgelehnt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Field with the undulation</source>
   <translation>Feld mit der Undulation</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Geoid height above the ellipsoid at each station, in the unit of heights. Used with UNDULATION 'field'. Empty: a field 'undulation'.</source>
   <translation>Geoidhöhe über dem Ellipsoid an jeder Station, in der Höheneinheit. Verwendet mit UNDULATION 'field'. Leer: ein Feld 'undulation'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>One geoid height for all stations, in the unit of heights. Used with UNDULATION 'constant'; 43.6 says that the geoid lies 43.6 m above the ellipsoid. It hides the geoid's slope and bending: 5 seconds of arc are 73 mm in 3 km.</source>
   <translation>Eine Geoidhöhe für alle Stationen, in der Höheneinheit. Verwendet mit UNDULATION 'constant'; 43.6 besagt, dass das Geoid 43,6 m über dem Ellipsoid liegt. Geoidneigung und Geoidkrümmung bleiben dabei verborgen: 5 Bogensekunden sind 73 mm auf 3 km.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>none: heights as levelled. normal: normal-orthometric, by normal gravity on GRS 80. Level surfaces draw together towards the poles: 17 mm over 10 km north-south at 2,000 m. {}</source>
   <translation>none (keine): Höhen wie nivelliert. normal (normalorthometrisch): mit der Normalschwere auf GRS 80. Niveauflächen rücken zu den Polen hin zusammen: 17 mm auf 10 km in Nord-Süd-Richtung in 2000 m Höhe. {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Height of the datum above the sea</source>
   <translation>Bezugshöhe über dem Meer</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Of the zero of these heights, in the unit of heights, for GRAVITY 'normal', which needs heights above the sea: 200 where they count from a mark 200 m above it. Empty: 0, the heights count from the sea.</source>
   <translation>Des Nullpunkts dieser Höhen, in der Höheneinheit, für GRAVITY 'normal', das Höhen über dem Meer braucht: 200, wenn sie von einer Marke 200 m darüber zählen. Leer: 0, die Höhen zählen vom Meer.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Between the nodes of the grid</source>
   <translation>Zwischen den Gitterknoten</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>smooth: a bicubic spline, without kinks at the edges of cells. bilinear: for heights that other software reduced by bilinear cells, so that they go back as they came; their kinks are centimetres in 3 km, more near steep islands. Empty: as the run that made the stations, else smooth.</source>
   <translation>smooth (glatt): ein bikubischer Spline, ohne Knicke an den Zellrändern. bilinear: für Höhen, die andere Software mit bilinearen Zellen reduziert hat, damit sie zurückkommen, wie sie waren; die Knicke machen Zentimeter auf 3 km aus, bei steilen Inseln mehr. Leer: wie im Lauf, der die Stationen erzeugt hat, sonst smooth.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Geoid raster</source>
   <translation>Geoidraster</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Raster of geoid undulations in metres, in latitude and longitude (GeoTIFF, GTX or any other format that QGIS reads). Used with UNDULATION 'grid'. Empty: the grid of GEOID_NAME, else the EGM96 grid that PROJ has.</source>
   <translation>Raster der Geoidundulationen in Metern, in geographischer Breite und Länge (GeoTIFF, GTX oder ein anderes Format, das QGIS liest). Verwendet mit UNDULATION 'grid'. Leer: das Gitter aus GEOID_NAME, sonst das EGM96-Gitter, das PROJ hat.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Geoid grid of PROJ, by name</source>
   <translation>Geoidgitter von PROJ, nach Name</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>File name of a geoid grid that PROJ has installed, for example us_nga_egm08_25.tif, instead of a raster. Used with UNDULATION 'grid'; nothing is fetched, and a grid that is missing stops the run.</source>
   <translation>Dateiname eines Geoidgitters, das PROJ installiert hat, zum Beispiel us_nga_egm08_25.tif, anstelle eines Rasters. Verwendet mit UNDULATION 'grid'; nichts wird heruntergeladen, und ein fehlendes Gitter hält den Lauf an.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Radius of the sphere (metres)</source>
   <translation>Kugelradius (Meter)</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>The mean one is 6371000. Empty: Euler's radius of curvature at the axis' middle in its azimuth.</source>
   <translation>Der mittlere ist 6371000. Leer: Eulers Krümmungsradius in der Mitte der Achse in deren Azimut.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Interval</source>
   <translation>Intervall</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Chainage between stations, in the unit of chainages; stations stand at its multiples: 50 gives 0+000, 0+050, 0+100. Empty: none.</source>
   <translation>Stationierung zwischen den Stationen, in der Einheit der Stationierung; Stationen liegen auf deren Vielfachen: 50 ergibt 0+000, 0+050, 0+100. Leer: keine.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>At vertices</source>
   <translation>An Stützpunkten</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Stations at both ends and at every bend of the axis.</source>
   <translation>Stationen an beiden Enden und an jedem Knick der Achse.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Listed chainages</source>
   <translation>Stationsliste</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Stations or distances separated by semicolons or line breaks, for example 0+500; 1+250.</source>
   <translation>Stationen oder Entfernungen, durch Semikolon oder Zeilenumbruch getrennt, zum Beispiel 0+500; 1+250.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Move the points onto the axis</source>
   <translation>Punkte auf die Achse versetzen</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Off: the points stay where they are.</source>
   <translation>Aus: Die Punkte bleiben, wo sie sind.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Of the position of each point, along the {} axis of the points' reference system; both in one unit, that of heights where 'Fit a straight line or plane' is to take 'sd_line' from them. Empty: a field '{}', if any.</source>
   <translation>Der Lage jedes Punktes, entlang der {}-Achse des Bezugssystems der Punkte; beide in derselben Einheit, der der Höhen, wenn 'Gerade oder Ebene einpassen' 'sd_line' daraus nehmen soll. Leer: ein Feld '{}', falls vorhanden.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Field with the standard deviation to the east</source>
   <translation>Feld mit der Standardabweichung in Ost</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Field with the standard deviation to the north</source>
   <translation>Feld mit der Standardabweichung in Nord</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Field with the correlation of east and north</source>
   <translation>Feld mit der Korrelation von Ost und Nord</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>From -1 to 1. Empty: a field 'cor_en', else east and north are taken as independent.</source>
   <translation>Von -1 bis 1. Leer: ein Feld 'cor_en', sonst gelten Ost und Nord als unabhängig.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Output of 'Design heights and residuals': points with a field 'residual', and axis, station, chainage, design_h where there are.</source>
   <translation>Ausgabe von 'Soll-Höhen und Abweichungen': Punkte mit einem Feld 'residual' sowie axis, station, chainage, design_h, wo vorhanden.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Title</source>
   <translation>Titel</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Heading of the printed sheets: project, structure. Empty: the layer's name.</source>
   <translation>Überschrift der gedruckten Blätter: Projekt, Bauwerk. Leer: der Name des Layers.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Unit of residuals, heights and tolerance in the stations. Empty: that of the run that computed them, as its record says, else metre.</source>
   <translation>Einheit von Abweichungen, Höhen und Toleranz in den Stationen: metre (Meter), foot (Fuß, international) oder us_foot (US-Vermessungsfuß). Leer: die des Laufs, der sie berechnet hat, laut dessen Laufprotokoll, sonst Meter.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/parameters.py" />
   <source>Empty: that of the run that computed the stations, else as the heights.</source>
   <translation>Leer: die des Laufs, der die Stationen berechnet hat, sonst wie die Höhen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/recorded_chain.py" />
   <source>{} older than {}</source>
   <translation>{} älter als {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/recorded_chain.py" />
   <source>Out of date: {}.</source>
   <translation>Veraltet: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/recorded_chain.py" />
   <source> and {} more layers</source>
   <translation> und {} weitere Layer</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/recorded_chain.py" />
   <source>Out of date: {}{}, older than {}.</source>
   <translation>Veraltet: {}{}, älter als {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/recorded_paths.py" />
   <source>a layer in memory: save it first</source>
   <translation>ein Layer im Arbeitsspeicher: zuerst speichern</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/recorded_system.py" />
   <source>UNDULATION is '{}', but the record of layer '{}' says '{}'; they cannot both be right.</source>
   <translation>UNDULATION ist '{}', das Laufprotokoll des Layers '{}' nennt aber '{}'; beides zugleich kann nicht stimmen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/recorded_system.py" />
   <source>Layer '{}' ({}) is in {}, but its record says that its coordinates are in {}; set that reference system, or transform the layer into a new one.</source>
   <translation>Layer '{}' ({}) liegt in {}, laut seinem Laufprotokoll liegen seine Koordinaten aber in {}; dieses Bezugssystem einstellen oder den Layer in einen neuen transformieren.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/refusals.py" />
   <source>Cancelled; no output was written.</source>
   <translation>Abgebrochen; keine Ausgabe wurde geschrieben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/request.py" />
   <source>{} is empty; choose a layer.</source>
   <translation>{} ist leer; einen Layer wählen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/run_record.py" />
   <source>the record of the run that made it is damaged; what cannot be read of it does not count: {}.</source>
   <translation>Das Laufprotokoll seiner Erzeugung ist beschädigt; was davon nicht lesbar ist, zählt nicht: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/run_record.py" />
   <source>all of it</source>
   <translation>alles</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/run_sequence.py" />
   <source>{} is given, but not used, since {} is not '{}'.</source>
   <translation>{} ist angegeben, wird aber nicht verwendet, da {} nicht '{}' ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/run_sequence.py" />
   <source>{}: this format cuts texts at 254 characters, so the record of the run is not whole there; a GeoPackage keeps it.</source>
   <translation>{}: Dieses Format kürzt Texte auf 254 Zeichen, daher ist das Laufprotokoll dort unvollständig; ein GeoPackage bewahrt es ganz.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/run_sequence.py" />
   <source>The style of {} could not be saved into the GeoPackage: {}</source>
   <translation>Der Stil von {} konnte nicht im GeoPackage gespeichert werden: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/stale_inputs.py" />
   <source>the input {}, '{}', no longer exists</source>
   <translation>die Eingabe {}, '{}', existiert nicht mehr</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/stale_inputs.py" />
   <source>the input {}, '{}', has changed since</source>
   <translation>die Eingabe {}, '{}', hat sich seither geändert</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/stale_inputs.py" />
   <source>Layer '{}' ({}) is older than what it was made from: {}; run that step again.</source>
   <translation>Layer '{}' ({}) ist älter als das, woraus er erzeugt wurde: {}; diesen Schritt erneut ausführen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/stated_units.py" />
   <source>Layer '{}': its chainages are in '{}', and nothing states the unit of heights; give it.</source>
   <translation>Layer '{}': Die Stationierung ist in '{}', und nirgends ist die Höheneinheit angegeben; angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/stated_units.py" />
   <source>Layer '{}': nothing states the unit of heights; taken as metre (HEIGHT_UNIT).</source>
   <translation>Layer '{}': Nirgends ist die Höheneinheit angegeben; als Meter gelesen (HEIGHT_UNIT).</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/stated_units.py" />
   <source>{} is '{}'</source>
   <translation>{} ist '{}'</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/stated_units.py" />
   <source>the record of layer '{}' says '{}'</source>
   <translation>das Laufprotokoll des Layers '{}' nennt '{}'</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/stated_units.py" />
   <source>Layer '{}': the heading '{}' says {}; metres and feet are read, so convert the column first.</source>
   <translation>Layer '{}': Die Überschrift '{}' nennt {}; gelesen werden Meter und Fuß, daher die Spalte zuerst umrechnen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/stated_units.py" />
   <source>the heading '{}' of layer '{}' says '{}'</source>
   <translation>die Überschrift '{}' des Layers '{}' nennt '{}'</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/stated_units.py" />
   <source>{}{}, but {}; they cannot both be right.</source>
   <translation>{}{}, aber {}; beides zugleich kann nicht stimmen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/strict_values.py" />
   <source>an expression that gives a value</source>
   <translation>ein Ausdruck, der einen Wert ergibt</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/strict_values.py" />
   <source>{} is '{}', which is not a number.</source>
   <translation>{} ist '{}', aber keine Zahl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/strict_values.py" />
   <source>{} is {}, which is not a finite number.</source>
   <translation>{} ist {}, aber keine endliche Zahl.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/strict_values.py" />
   <source>at least {}</source>
   <translation>mindestens {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/strict_values.py" />
   <source>at most {}</source>
   <translation>höchstens {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/strict_values.py" />
   <source>{} is {}, but must be {}.</source>
   <translation>{} ist {}; verlangt ist {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/strict_values.py" />
   <source>yes or no</source>
   <translation>ja oder nein</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/strict_values.py" />
   <source>{} is '{}', but can only be {}.</source>
   <translation>{} ist '{}'; möglich sind nur: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/strict_values.py" />
   <source>a text</source>
   <translation>ein Text</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/strict_values.py" />
   <source>a text without control characters</source>
   <translation>ein Text ohne Steuerzeichen</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/strict_values.py" />
   <source>a raster layer</source>
   <translation>ein Rasterlayer</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/strict_values.py" />
   <source>{}: '{}' cannot be opened as a layer; is it missing, damaged or of another kind?</source>
   <translation>{}: '{}' lässt sich nicht als Layer öffnen; fehlt die Quelle, ist sie beschädigt oder von anderer Art?</translation>
  </message>
  <message>
   <location filename="../../algorithms/entry/strict_values.py" />
   <source>{} is '{}', but must be {}.</source>
   <translation>{} ist '{}'; verlangt ist {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/fit_reference.py" />
   <source>Fit a straight line or plane</source>
   <translation>Gerade oder Ebene einpassen</translation>
  </message>
  <message>
   <location filename="../../algorithms/fit_reference.py" />
   <source>Fits the straight line of each axis, or the plane that several axes share, to the surveyed heights by least squares on the exact model, tests every station for a blunder, and tells where the line or plane is level, with what certainty.

w is the residual over its standard deviation as the test sees it; beyond 3.29 a blunder is suspected. Each suspect is listed and stays in the output. Neighbours that are flagged together are more likely a stretch that has moved than blunders.

Two places are told apart. At the level point the plane lies in the horizon, and water on it would stand still; at the tangent point it is parallel to the ellipsoid. Heights above the geoid know the level point, and the tangent point only as well as the slope of the geoid; ellipsoidal heights the reverse. One second of arc of slope is 31 m. Each point has a 95 % ellipse of its own.

LINE fits the line in plan as well, and tests every station laterally too: a tripod that was knocked shows there. Heights and line are tested apart; lateral is the departure in plan, positive is right.

The reference goes into 'Design heights and residuals' with the design 'reference', for this survey and later ones. Results are for review; a licensed surveyor or engineer decides.</source>
   <translation>Passt die Gerade jeder Achse oder die gemeinsame Ebene mehrerer Achsen nach der Methode der kleinsten Quadrate am exakten Modell in die gemessenen Höhen ein, testet jede Station auf einen groben Fehler und nennt, wo die Gerade oder Ebene horizontal ist und wie sicher das ist.

w ist die Abweichung geteilt durch ihre Standardabweichung, wie der Test sie sieht; über 3,29 wird ein grober Fehler vermutet. Jeder Verdacht wird aufgeführt und bleibt in der Ausgabe. Gemeinsam markierte Nachbarn sprechen eher für eine bewegte Strecke als für grobe Fehler.

Zwei Stellen werden unterschieden. Im Horizontalpunkt liegt die Ebene im Horizont, und Wasser auf ihr bliebe stehen; im Berührpunkt ist sie parallel zum Ellipsoid. Höhen über dem Geoid bestimmen den Horizontalpunkt, den Berührpunkt aber nur so gut wie die Geoidneigung; bei ellipsoidischen Höhen ist es umgekehrt. Eine Bogensekunde Neigung sind 31 m. Jeder Punkt hat seine eigene 95-%-Ellipse.

LINE gleicht auch die Linie im Grundriss aus und testet jede Station auch seitlich: Ein angestoßenes Stativ zeigt sich dort. Höhen und Linie werden getrennt getestet; lateral ist die Querabweichung im Grundriss, positiv ist rechts.

Der Bezug geht mit dem Entwurf 'reference' in 'Soll-Höhen und Abweichungen' ein, für diese und für spätere Messungen. Die Ergebnisse dienen der Prüfung; es entscheidet eine zugelassene Fachperson für Vermessung oder Ingenieurwesen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/fit_reference.py" />
   <source>fit</source>
   <translation>Ausgleich</translation>
  </message>
  <message>
   <location filename="../../algorithms/fit_reference.py" />
   <source>outlier</source>
   <translation>Ausreißer</translation>
  </message>
  <message>
   <location filename="../../algorithms/fit_reference.py" />
   <source>plane</source>
   <translation>Ebene</translation>
  </message>
  <message>
   <location filename="../../algorithms/fit_reference.py" />
   <source>straightness</source>
   <translation>Geradheit</translation>
  </message>
  <message>
   <location filename="../../algorithms/fit_reference.py" />
   <source>Stations farther from every axis stay in the output with the flag 'off axis'.</source>
   <translation>Stationen, die von jeder Achse weiter entfernt sind, bleiben mit der Markierung 'off axis' in der Ausgabe.</translation>
  </message>
  <message>
   <location filename="../../algorithms/fit_reference.py" />
   <source>A row for each line or plane: point, normal, accuracy, straightness, tangent point and level point, 31 m apart for each second of arc of geoid slope.</source>
   <translation>Eine Zeile je Gerade oder Ebene: Punkt, Normale, Genauigkeit, Geradheit, Berührpunkt und Horizontalpunkt, 31 m auseinander je Bogensekunde Geoidneigung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/fit_reference.py" />
   <source>The stations with residual, w, smallest detectable blunder and flag: suspected beyond 3.29.</source>
   <translation>Die Stationen mit Abweichung, w, kleinstem aufdeckbarem grobem Fehler und Markierung: verdächtig über 3,29.</translation>
  </message>
  <message>
   <location filename="../../algorithms/fit_reference.py" />
   <source>Ellipses of the tangent and level points</source>
   <translation>Ellipsen der Berühr- und Horizontalpunkte</translation>
  </message>
  <message>
   <location filename="../../algorithms/fit_reference.py" />
   <source>Each holds its point with a probability of 95 %, where the stated accuracies are true.</source>
   <translation>Jede enthält ihren Punkt mit einer Wahrscheinlichkeit von 95 %, sofern die angegebenen Genauigkeiten stimmen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/fit_reference.py" />
   <source>Stations fitted</source>
   <translation>Eingepasste Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/fit_reference.py" />
   <source>Stations fitted in plan</source>
   <translation>Eingepasst im Grundriss</translation>
  </message>
  <message>
   <location filename="../../algorithms/generate_stations.py" />
   <source>Generate stations along an axis</source>
   <translation>Stationen entlang einer Achse erzeugen</translation>
  </message>
  <message>
   <location filename="../../algorithms/generate_stations.py" />
   <source>Makes stations along each axis: at the multiples of an interval (50 gives 0+050, 0+100 and so on), at the axis' vertices, and at listed chainages. Chainage is measured on the ellipsoid at the chainage height, never in the map projection.

Run the result through 'Design heights and residuals' to get the design heights to set out.</source>
   <translation>Erzeugt Stationen entlang jeder Achse: auf den Vielfachen eines Intervalls (50 ergibt 0+050, 0+100 und so weiter), an den Stützpunkten der Achse und an aufgeführten Stationen. Die Stationierung wird auf dem Ellipsoid in der Stationierungshöhe gemessen, nie in der Kartenprojektion.

Das Ergebnis durch 'Soll-Höhen und Abweichungen' führen, um die abzusteckenden Soll-Höhen zu erhalten.</translation>
  </message>
  <message>
   <location filename="../../algorithms/generate_stations.py" />
   <source>chainage</source>
   <translation>Stationierung</translation>
  </message>
  <message>
   <location filename="../../algorithms/generate_stations.py" />
   <source>interval</source>
   <translation>Intervall</translation>
  </message>
  <message>
   <location filename="../../algorithms/generate_stations.py" />
   <source>set out</source>
   <translation>abstecken</translation>
  </message>
  <message>
   <location filename="../../algorithms/generate_stations.py" />
   <source>stationing</source>
   <translation>Stationswert</translation>
  </message>
  <message>
   <location filename="../../algorithms/generate_stations.py" />
   <source>Generated stations</source>
   <translation>Erzeugte Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/generate_stations.py" />
   <source>Points with axis, station, chainage, and the azimuth of the axis there: 90 is to the east.</source>
   <translation>Punkte mit Achse, Station, Stationierung und dem dortigen Azimut der Achse: 90 ist nach Osten.</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>inclined</source>
   <translation>geneigte Gerade</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>reference</source>
   <translation>Bezug</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>fitted</source>
   <translation>eingepasst</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>chainage a</source>
   <translation>Stationierung A</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>height a</source>
   <translation>Höhe A</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>chainage b</source>
   <translation>Stationierung B</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>height b</source>
   <translation>Höhe B</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>slope</source>
   <translation>Neigung</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>refraction</source>
   <translation>Refraktion</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>radius</source>
   <translation>Radius</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>angle</source>
   <translation>Winkel</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>distance</source>
   <translation>Entfernung</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>distance ratio</source>
   <translation>Maßstabsverhältnis</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>reading</source>
   <translation>Ablesung</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>k</source>
   <translation>k</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>collimation</source>
   <translation>Ziellinienfehler</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>correction</source>
   <translation>Korrektion</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>pressure</source>
   <translation>Luftdruck</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_sentences.py" />
   <source>temperature</source>
   <translation>Temperatur</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>offset</source>
   <translation>Querabstand</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>transposed digits</source>
   <translation>Zahlendreher</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>slipped decimal point</source>
   <translation>verschobenes Dezimalkomma</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>feet taken for metres</source>
   <translation>Fuß für Meter gehalten</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>metres taken for feet</source>
   <translation>Meter für Fuß gehalten</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>feet and inches</source>
   <translation>Fuß und Zoll</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>decimal comma</source>
   <translation>Dezimalkomma</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>negative numbers in brackets</source>
   <translation>negative Zahlen in Klammern</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>signs behind the number</source>
   <translation>Vorzeichen hinter der Zahl</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>thousands in groups</source>
   <translation>Tausendergruppen</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>units beside the numbers</source>
   <translation>Einheiten neben den Zahlen</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>an intermediate sight stands beside a back or a fore sight</source>
   <translation>ein Zwischenblick steht neben einem Rückblick oder Vorblick</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>no fore sight follows it</source>
   <translation>es folgt kein Vorblick</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>the row has no reading</source>
   <translation>die Zeile hat keine Ablesung</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>no back sight goes before it</source>
   <translation>es geht kein Rückblick voraus</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>8-inch rule</source>
   <translation>8-Zoll-Regel</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>sphere</source>
   <translation>Kugel</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>free</source>
   <translation>frei</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/core_words.py" />
   <source>poorly determined</source>
   <translation>schlecht bestimmt</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/decision_words.py" />
   <source>stretch that moved in line</source>
   <translation>seitlich bewegte Strecke</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/decision_words.py" />
   <source>suspected blunder in line</source>
   <translation>vermuteter grober Fehler in der Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/decision_words.py" />
   <source>None yet</source>
   <translation>Noch keine</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/decision_words.py" />
   <source>Accept as it is</source>
   <translation>So belassen</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/decision_words.py" />
   <source>Measure again</source>
   <translation>Nachmessen</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/decision_words.py" />
   <source>Reading error</source>
   <translation>Ablesefehler</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/decision_words.py" />
   <source>Move the support</source>
   <translation>Auflager verstellen</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/decision_words.py" />
   <source>Nothing has been decided about this station.</source>
   <translation>Über diese Station ist noch nichts entschieden.</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/decision_words.py" />
   <source>The station stays as it was built, although it is flagged.</source>
   <translation>Die Station bleibt, wie sie gebaut ist, obwohl sie markiert ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/decision_words.py" />
   <source>The height is doubted; nothing is moved before it has been measured again.</source>
   <translation>Die Höhe ist zweifelhaft; nichts wird bewegt, bevor nachgemessen ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/decision_words.py" />
   <source>The height is wrong, not the structure; the station is left out of the adjustment schedule.</source>
   <translation>Die Höhe ist falsch, nicht das Bauwerk; die Station wird im Korrekturplan ausgelassen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/decision_words.py" />
   <source>The height is right; the support is to be raised or lowered.</source>
   <translation>Die Höhe stimmt; das Auflager ist zu heben oder zu senken.</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/height_text.py" />
   <source>{} right</source>
   <translation>{} rechts</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/height_text.py" />
   <source>{} left</source>
   <translation>{} links</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/number_text.py" />
   <source>and {} more</source>
   <translation>und {} weitere</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>within</source>
   <translation>innerhalb</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>high</source>
   <translation>zu hoch</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>low</source>
   <translation>zu tief</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>no height</source>
   <translation>keine Ist-Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>no tolerance</source>
   <translation>ohne Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>off axis</source>
   <translation>abseits der Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>no line</source>
   <translation>keine Querabweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>kept</source>
   <translation>behalten</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>suspected blunder</source>
   <translation>vermuteter grober Fehler</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>not fitted</source>
   <translation>nicht eingepasst</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>measure again</source>
   <translation>nachmessen</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>unchecked</source>
   <translation>nicht kontrolliert</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>no benchmark</source>
   <translation>ohne Höhenfestpunkt</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>risen</source>
   <translation>gehoben</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>settled</source>
   <translation>gesetzt</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>inside the structure</source>
   <translation>innerhalb des Bauwerks</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>outside the structure</source>
   <translation>außerhalb des Bauwerks</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>significant</source>
   <translation>signifikant</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>straight line</source>
   <translation>Gerade</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>above the ellipsoid</source>
   <translation>über dem Ellipsoid</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>above the geoid; its undulation was not known to the run</source>
   <translation>über dem Geoid; dessen Undulation war dem Lauf nicht bekannt</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>above the geoid</source>
   <translation>über dem Geoid</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>ellipsoid</source>
   <translation>Ellipsoid</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>flat</source>
   <translation>flach</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>accept</source>
   <translation>so belassen</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>reading error</source>
   <translation>Ablesefehler</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>move the support</source>
   <translation>Auflager verstellen</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>keep</source>
   <translation>belassen</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>left out</source>
   <translation>ausgelassen</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>fixed</source>
   <translation>fest</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>weighted</source>
   <translation>gewichtet</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>held</source>
   <translation>festgehalten</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>checked</source>
   <translation>kontrolliert</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>adjusted</source>
   <translation>ausgeglichen</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>not in the net</source>
   <translation>nicht im Netz</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>beyond</source>
   <translation>überschritten</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>no limit</source>
   <translation>ohne Grenze</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>chord: straight between two controls</source>
   <translation>Sehne: gerade zwischen zwei Zwangspunkten</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>tangent: straight, level at its control</source>
   <translation>Tangente: gerade, horizontal in ihrem Zwangspunkt</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>inclined: straight, with a slope at its control</source>
   <translation>geneigt: gerade, mit einer Neigung in ihrem Zwangspunkt</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>a fitted or fixed plane</source>
   <translation>eine eingepasste oder festgelegte Ebene</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>level: follows the level surface</source>
   <translation>Niveau: folgt der Niveaufläche</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>grade: a constant slope above the level surface</source>
   <translation>Neigung: konstante Neigung über der Niveaufläche</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>the axis as drawn</source>
   <translation>die Achse wie gezeichnet</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>the vertical plane through two of its stations</source>
   <translation>die Vertikalebene durch zwei ihrer Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>the vertical plane that fits its stations best</source>
   <translation>die ausgleichende Vertikalebene ihrer Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>ellipsoid, exact</source>
   <translation>Ellipsoid, streng</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>sphere, for comparison only</source>
   <translation>Kugel, nur zum Vergleich</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>no curvature, for comparison only</source>
   <translation>ohne Erdkrümmung, nur zum Vergleich</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>above a geoid whose undulation is not known to the run</source>
   <translation>über einem Geoid, dessen Undulation dem Lauf nicht bekannt ist</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>above the geoid, undulations of the stations from a field</source>
   <translation>über dem Geoid, Undulationen der Stationen aus einem Feld</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>above the geoid, undulations from a grid</source>
   <translation>über dem Geoid, Undulationen aus einem Gitter</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/stored_words.py" />
   <source>above the geoid, one undulation for all</source>
   <translation>über dem Geoid, eine Undulation für alle</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/units.py" />
   <source>metres</source>
   <translation>Meter</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/units.py" />
   <source>feet (international)</source>
   <translation>Fuß (international)</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/units.py" />
   <source>US survey feet</source>
   <translation>US-Vermessungsfuß</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/units.py" />
   <source>millimetres</source>
   <translation>Millimeter</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/units.py" />
   <source>centimetres</source>
   <translation>Zentimeter</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/units.py" />
   <source>inches</source>
   <translation>Zoll</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/units.py" />
   <source>kilometres</source>
   <translation>Kilometer</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/units.py" />
   <source>miles</source>
   <translation>Meilen</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/units.py" />
   <source>metre</source>
   <translation>Meter</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/units.py" />
   <source>international foot (0.3048 m)</source>
   <translation>Fuß, international (0,3048 m)</translation>
  </message>
  <message>
   <location filename="../../algorithms/language/units.py" />
   <source>US survey foot (1200/3937 m)</source>
   <translation>US-Vermessungsfuß (1200/3937 m)</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/gravity.py" />
   <source>GRAVITY 'normal' needs the latitudes of the points: give them as STATIONS, points with the names of the net.</source>
   <translation>GRAVITY 'normal' braucht die Breiten der Punkte: als STATIONS angeben, Punkte mit den Namen des Netzes.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/gravity.py" />
   <source>Layer '{}', row {}: the point '{}' is not among STATIONS, and GRAVITY 'normal' needs the latitude of every point.</source>
   <translation>Layer '{}', Zeile {}: Der Punkt '{}' fehlt in STATIONS, und GRAVITY 'normal' braucht die Breite jedes Punktes.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/gravity.py" />
   <source>Layer '{}', row {}: the point '{}' reaches no benchmark, and GRAVITY 'normal' needs heights above the sea.</source>
   <translation>Layer '{}', Zeile {}: Der Punkt '{}' hat keinen Anschluss an einen Höhenfestpunkt, und GRAVITY 'normal' braucht Höhen über dem Meer.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/levelled_system.py" />
   <source>The record of layer '{}' says that its heights are ellipsoidal; levelled heights are above the geoid, and the record of the result says so. Their undulation is not known to it.</source>
   <translation>Nach dem Laufprotokoll des Layers '{}' sind seine Höhen ellipsoidisch; nivellierte Höhen liegen über dem Geoid, und so nennt es das Laufprotokoll des Ergebnisses. Ihre Undulation kennt es nicht.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/levelled_system.py" />
   <source>Layer '{}' no longer holds the undulations of its stations: they are taken as not known.</source>
   <translation>Layer '{}' enthält die Undulationen seiner Stationen nicht mehr: Sie gelten als nicht bekannt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/levelled_system.py" />
   <source>Levelled heights are above the geoid; UNDULATION is '{}', as the record of layer '{}' says.</source>
   <translation>Nivellierte Höhen liegen über dem Geoid; UNDULATION ist '{}', wie das Laufprotokoll des Layers '{}' sagt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>Layer '{}' has no field {}; choose it ({}).</source>
   <translation>Layer '{}' hat kein Feld {}; wählen ({}).</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>Layer '{}' has no rows.</source>
   <translation>Layer '{}' hat keine Zeilen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>the length is negative</source>
   <translation>die Länge ist negativ</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>Layer '{}', row {}: the line starts and ends at '{}'.</source>
   <translation>Layer '{}', Zeile {}: Die Linie beginnt und endet bei '{}'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>Layer '{}': not used, since a point or the height difference is missing: {} {}.</source>
   <translation>Layer '{}': nicht verwendet, da ein Punkt oder der Höhenunterschied fehlt: {} {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>Layer '{}': no row has both points and a height difference.</source>
   <translation>Layer '{}': Keine Zeile hat beide Punkte und einen Höhenunterschied.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>Layer '{}', row {}: {} ({}: {}).</source>
   <translation>Layer '{}', Zeile {}: {} ({}: {}).</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>the standard deviation must be positive</source>
   <translation>die Standardabweichung muss positiv sein</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>standard deviations of the lines from the field '{}'</source>
   <translation>Standardabweichungen der Linien aus dem Feld '{}'</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>one accuracy for all lines, estimated</source>
   <translation>eine Genauigkeit für alle Linien, geschätzt</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>{} {} for every line</source>
   <translation>{} {} für jede Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>1 km</source>
   <translation>1 km</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>a setup</source>
   <translation>eine Aufstellung</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>WEIGHTS '{}' needs a positive number</source>
   <translation>WEIGHTS '{}' braucht eine positive Zahl</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>weights by {}, the standard deviation of {} estimated</source>
   <translation>Gewichte nach {}, Standardabweichung für {} geschätzt</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>length</source>
   <translation>Länge</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>setups</source>
   <translation>Aufstellungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>{} mm for {}, growing with the square root</source>
   <translation>{} mm für {}, mit der Wurzel wachsend</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>Layer '{}' has no field with the benchmarks' names; choose it (BENCHMARK_FIELD).</source>
   <translation>Layer '{}' hat kein Feld mit den Namen der Höhenfestpunkte; wählen (BENCHMARK_FIELD).</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>Layer '{}' has no field 'height' and no Z; choose the field with the benchmarks' heights (BENCHMARK_HEIGHT_FIELD).</source>
   <translation>Layer '{}' hat kein Feld 'height' und kein Z; das Feld mit den Höhen der Höhenfestpunkte wählen (BENCHMARK_HEIGHT_FIELD).</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>Layer '{}', rows {} and {}: the benchmark '{}' is given twice.</source>
   <translation>Layer '{}', Zeilen {} und {}: Der Höhenfestpunkt '{}' ist doppelt angegeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>Layer '{}', row {}: the standard deviation of the benchmark '{}' is negative.</source>
   <translation>Layer '{}', Zeile {}: Die Standardabweichung des Höhenfestpunkts '{}' ist negativ.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_input.py" />
   <source>Layer '{}' has no row with a name and a height.</source>
   <translation>Layer '{}' hat keine Zeile mit Name und Höhe.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>{} from '{}'</source>
   <translation>{} aus '{}'</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>start</source>
   <translation>Anfang</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>end</source>
   <translation>Ende</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>height difference</source>
   <translation>Höhenunterschied</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>Understood: {} between {} of layer '{}'; {}; {}; heights in {}, lengths in {}.</source>
   <translation>Verstanden: {}, {} aus Layer '{}'; {}; {}; Höhen in {}, Längen in {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>point</source>
   <translation>Punkt</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>Free adjustment; held: {}.</source>
   <translation>Freie Ausgleichung; festgehalten: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>{} at {}</source>
   <translation>{} mit {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>{} at {}, standard deviation {}</source>
   <translation>{} mit {}, Standardabweichung {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>held fixed: {}</source>
   <translation>festgehalten: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>taking part with their standard deviation: {}</source>
   <translation>mit ihrer Standardabweichung beteiligt: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>Benchmarks {}.</source>
   <translation>Höhenfestpunkte {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>Gravity: normal-orthometric correction of {} to {} a line (normal gravity on GRS 80; {}).</source>
   <translation>Schwere: normalorthometrische Reduktion von {} bis {} je Linie (Normalschwere auf GRS 80; {}).</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>Gravity: line {} would be corrected by {} (normal-orthometric, heights taken as above the sea), more than a tenth of {}, {}; GRAVITY 'normal' does it.</source>
   <translation>Schwere: Linie {} würde um {} reduziert (normalorthometrisch, Höhen gelten als über dem Meer), mehr als ein Zehntel von {}, {}; GRAVITY 'normal' nimmt die Reduktion vor.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>its limit</source>
   <translation>ihrer Grenze</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>3.29 of its standard deviations</source>
   <translation>dem 3,29-Fachen ihrer Standardabweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>Adjusted: {} from {}, {} degrees of freedom.</source>
   <translation>Ausgeglichen: {} aus {}, Freiheitsgrade: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>heights</source>
   <translation>Höhen</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>observation</source>
   <translation>Beobachtung</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>observations</source>
   <translation>Beobachtungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source> Standard deviations of the heights {} to {}.</source>
   <translation> Standardabweichungen der Höhen {} bis {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>a line</source>
   <translation>eine Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>Standard deviation of {} as estimated: {}.</source>
   <translation>Geschätzte Standardabweichung für {}: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>Global test {}: weighted sum of squares {}, between {} and {} expected (95 percent); variance factor {}.</source>
   <translation>Globaltest {}: gewichtete Quadratsumme {}, erwartet zwischen {} und {} (95 Prozent); Varianzfaktor {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>Every height is determined once only: no line is checked.</source>
   <translation>Jede Höhe ist nur einfach bestimmt: Keine Linie ist kontrolliert.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>section levelled more than once</source>
   <translation>mehrfach nivellierte Strecke</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>sections levelled more than once</source>
   <translation>mehrfach nivellierte Strecken</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>independent loop</source>
   <translation>unabhängige Schleife</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>independent loops</source>
   <translation>unabhängige Schleifen</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>route between fixed benchmarks</source>
   <translation>Weg zwischen festgehaltenen Höhenfestpunkten</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>routes between fixed benchmarks</source>
   <translation>Wege zwischen festgehaltenen Höhenfestpunkten</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source> of {} allowed</source>
   <translation> von zulässigen {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>{}: greatest misclosure {}{} ({}).</source>
   <translation>{}: größter Widerspruch {}{} ({}).</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>No line touches {}: {}.</source>
   <translation>Keine Linie berührt {}: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>the benchmark</source>
   <translation>den Höhenfestpunkt</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>the benchmarks</source>
   <translation>die Höhenfestpunkte</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>Benchmarks and points whose names are nearly the same: {}.</source>
   <translation>Höhenfestpunkte und Punkte mit fast gleichen Namen: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>Points whose names are nearly the same, taken as different: {}.</source>
   <translation>Punkte mit fast gleichen Namen, als verschieden behandelt: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>No point of the net is among the stations of layer '{}'.</source>
   <translation>Kein Punkt des Netzes gehört zu den Stationen des Layers '{}'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>'{}' and '{}'</source>
   <translation>'{}' und '{}'</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>The part of the net with {} ({}) reaches no benchmark and gets no heights: tie it to the rest, or give it a benchmark.</source>
   <translation>Der Netzteil mit {} ({}) hat keinen Anschluss an einen Höhenfestpunkt und erhält keine Höhen: mit dem Rest verbinden oder ihm einen Höhenfestpunkt geben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>{} more parts reach no benchmark.</source>
   <translation>Weitere Netzteile ohne Anschluss an einen Höhenfestpunkt: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>The global test fails: the lines agree {} than their stated accuracy would suggest; {}.</source>
   <translation>Der Globaltest ist nicht bestanden: Die Linien stimmen {} überein, als ihre angegebene Genauigkeit erwarten lässt; {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>worse</source>
   <translation>schlechter</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>a blunder, a moved benchmark, or an accuracy that is too good</source>
   <translation>ein grober Fehler, ein bewegter Höhenfestpunkt oder eine zu gut angesetzte Genauigkeit</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>better</source>
   <translation>besser</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>the stated accuracy is too poor</source>
   <translation>die angegebene Genauigkeit ist zu schlecht angesetzt</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>benchmark {}</source>
   <translation>Höhenfestpunkt {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>{}: w = {}, observed minus adjusted {}: a blunder is suspected, of about {}.</source>
   <translation>{}: w = {}, beobachtet minus ausgeglichen {}: Ein grober Fehler von etwa {} wird vermutet.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source> A blunder in {} would look the same.</source>
   <translation> Ein grober Fehler in {} sähe ebenso aus.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source> {} more are in LINES.</source>
   <translation> Weitere {} stehen in LINES.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>A blunder raises the test values around it too: check the first of these, leave it out if it proves wrong, and run again before you doubt the others.{}</source>
   <translation>Ein grober Fehler erhöht auch die Testgrößen ringsum: zuerst den ersten prüfen, weglassen, wenn er sich als falsch erweist, und erneut ausführen, bevor die anderen angezweifelt werden.{}</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>Benchmark {} comes out {} {} than given, {} times its standard deviation: it may have moved, or its given height may be wrong.</source>
   <translation>Höhenfestpunkt {} ergibt sich um {} {} als gegeben, das {}-Fache seiner Standardabweichung: Er kann sich bewegt haben, oder die gegebene Höhe kann falsch sein.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>higher</source>
   <translation>höher</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>lower</source>
   <translation>tiefer</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>Misclosure {} of {} exceeds its limit {} ({}).</source>
   <translation>Der Widerspruch {} von {} überschreitet seine Grenze {} ({}).</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>section</source>
   <translation>Nivellementstrecke</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>between fixed benchmarks</source>
   <translation>zwischen festen Höhenfestpunkten</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>{} more misclosures exceed their limit; see MISCLOSURES.</source>
   <translation>{} weitere Widersprüche überschreiten ihre Grenze; siehe MISCLOSURES.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>{} without a limit, since a line in it has no length.</source>
   <translation>{} ohne Grenze, da darin eine Linie keine Länge hat.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>misclosure stays</source>
   <translation>Widerspruch bleibt</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>misclosures stay</source>
   <translation>Widersprüche bleiben</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>{} checked by no other: {}.</source>
   <translation>{} von keiner anderen kontrolliert: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>line is</source>
   <translation>Linie wird</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_messages.py" />
   <source>lines are</source>
   <translation>Linien werden</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>What was done</source>
   <translation>Was gerechnet wurde</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>Adjustment of the levelling</source>
   <translation>Ausgleichung des Nivellements</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>adjusted height</source>
   <translation>ausgeglichene Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>adjusted heights</source>
   <translation>ausgeglichene Höhen</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>no blunder suspected</source>
   <translation>kein grober Fehler vermutet</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>suspected blunders</source>
   <translation>vermutete grobe Fehler</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>all misclosures within their limits</source>
   <translation>alle Widersprüche innerhalb ihrer Grenzen</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>misclosure beyond its limit</source>
   <translation>Widerspruch über seiner Grenze</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>misclosures beyond their limits</source>
   <translation>Widersprüche über ihren Grenzen</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>{}.</source>
   <translation>{}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>Limit: {} mm times the square root of the length in kilometres, as typed.</source>
   <translation>Grenze: {} mm mal Wurzel der Länge in Kilometern, wie eingegeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>No limit was asked for.</source>
   <translation>Es wurde keine Grenze verlangt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>Limits of '{}': {}.</source>
   <translation>Grenzen von '{}': {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>{}: {} mm times the square root of the length in kilometres ({})</source>
   <translation>{}: {} mm mal Wurzel der Länge in Kilometern ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>No section was levelled twice and no loop closes.</source>
   <translation>Keine Nivellementstrecke wurde doppelt nivelliert, und keine Schleife schließt sich.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>Length ({})</source>
   <translation>Länge ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>Misclosure ({})</source>
   <translation>Widerspruch ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>Limit ({})</source>
   <translation>Grenze ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>between benchmarks</source>
   <translation>zwischen Höhenfestpunkten</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>The first {} of {}; {} holds all.</source>
   <translation>Die ersten {} von {}; {} enthält alle.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>Observed ({})</source>
   <translation>Beobachtet ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>Standard deviation ({})</source>
   <translation>Standardabweichung ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>Adjusted ({})</source>
   <translation>Ausgeglichen ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>Observed minus adjusted ({})</source>
   <translation>Beobachtet minus ausgeglichen ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>w</source>
   <translation>w</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>Smallest detectable blunder ({})</source>
   <translation>Kleinster aufdeckbarer Fehler ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>Lines, the greatest test value first</source>
   <translation>Linien, größte Testgröße zuerst</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>95 percent, ± ({})</source>
   <translation>95 Prozent, ± ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>Given ({})</source>
   <translation>Gegeben ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>Adjusted minus given ({})</source>
   <translation>Ausgeglichen minus gegeben ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_page.py" />
   <source>Entry</source>
   <translation>Werkzeug</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_results.py" />
   <source>FREE_POINT: no line of layer '{}' touches '{}'.</source>
   <translation>FREE_POINT: Keine Linie des Layers '{}' berührt '{}'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_results.py" />
   <source>FREE_POINT is given, but not used, since the adjustment is not free.</source>
   <translation>FREE_POINT ist angegeben, wird aber nicht verwendet, da die Ausgleichung nicht frei ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_results.py" />
   <source>no benchmark is given</source>
   <translation>es ist kein Höhenfestpunkt angegeben</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_results.py" />
   <source>the benchmarks are {}</source>
   <translation>die Höhenfestpunkte sind {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_results.py" />
   <source>No line of layer '{}' reaches a benchmark: its points are {}, and {}. Give BENCHMARKS, or run a free adjustment.</source>
   <translation>Keine Linie des Layers '{}' erreicht einen Höhenfestpunkt: Seine Punkte sind {}, und {}. BENCHMARKS angeben oder frei ausgleichen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_results.py" />
   <source>Benchmarks with a standard deviation need lines with one too: give SIGMA_KM, SIGMA_SETUP, SIGMA or a field 'sd'.</source>
   <translation>Höhenfestpunkte mit Standardabweichung brauchen auch Linien mit Standardabweichung: SIGMA_KM, SIGMA_SETUP, SIGMA oder ein Feld 'sd' angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_results.py" />
   <source>({} more)</source>
   <translation>({} weitere)</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_run.py" />
   <source>POINTS is not made, since there are no STATIONS.</source>
   <translation>POINTS wird nicht erzeugt, da STATIONS fehlt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/net_tables.py" />
   <source>Stations with adjusted heights</source>
   <translation>Stationen mit ausgeglichenen Höhen</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the point sighted from</source>
   <translation>Feld mit dem Standpunkt</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Name of the point under the instrument, or of the back staff.</source>
   <translation>Name des Punktes unter dem Instrument oder der Rückblicklatte.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the point sighted to</source>
   <translation>Feld mit dem Zielpunkt</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Name of the target's point, or of the fore staff.</source>
   <translation>Name des Zielpunkts oder der Vorblicklatte.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the slope distance</source>
   <translation>Feld mit der Schrägstrecke</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Along the line of sight.</source>
   <translation>Entlang der Ziellinie.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the horizontal distance</source>
   <translation>Feld mit der Horizontalstrecke</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Used where there is no slope distance; HORIZONTAL_AT says where it lies.</source>
   <translation>Verwendet, wo keine Schrägstrecke steht; HORIZONTAL_AT nennt, wo sie liegt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the zenith angle</source>
   <translation>Feld mit dem Zenitwinkel</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Counted from the zenith: a level sight has 90 degrees. Second-face readings are turned.</source>
   <translation>Vom Zenit gezählt: Eine horizontale Visur hat 90 Grad. Ablesungen in der zweiten Lage werden umgerechnet.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the vertical angle</source>
   <translation>Feld mit dem Höhenwinkel</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Counted from the horizon, positive up. Used where there is no zenith angle.</source>
   <translation>Vom Horizont gezählt, nach oben positiv. Verwendet, wo kein Zenitwinkel steht.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the instrument height</source>
   <translation>Feld mit der Instrumentenhöhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Above the point sighted from; 0 without one.</source>
   <translation>Über dem Standpunkt; 0, wo keine steht.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the target height</source>
   <translation>Feld mit der Zielhöhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Above the point sighted to; 0 without one.</source>
   <translation>Über dem Zielpunkt; 0, wo keine steht.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the back sight</source>
   <translation>Feld mit dem Rückblick</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Reading on the back staff of a level.</source>
   <translation>Ablesung eines Nivelliers an der Rückblicklatte.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the fore sight</source>
   <translation>Feld mit dem Vorblick</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Reading on the fore staff of a level.</source>
   <translation>Ablesung eines Nivelliers an der Vorblicklatte.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the length of the back sight</source>
   <translation>Feld mit der Zielweite des Rückblicks</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>From the level to the back staff; 0 where the reading is the instrument's own height above the point.</source>
   <translation>Vom Nivellier zur Rückblicklatte; 0, wo die Ablesung die Instrumentenhöhe über dem Punkt selbst ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the length of the fore sight</source>
   <translation>Feld mit der Zielweite des Vorblicks</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>From the level to the fore staff.</source>
   <translation>Vom Nivellier zur Vorblicklatte.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the staff's point, in a levelling book</source>
   <translation>Feld mit dem Lattenpunkt, im Nivellierbuch</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>For a book with one row for each staff point: back, intermediate and fore sights in columns. Turning points may stay without a name; sections run from one name to the next. Used where there is no field with 'from'.</source>
   <translation>Für ein Buch mit einer Zeile je Lattenpunkt: Rück-, Zwischen- und Vorblicke in Spalten. Wechselpunkte dürfen ohne Namen bleiben; Nivellementstrecken reichen von einem Namen zum nächsten. Verwendet, wo es kein Feld mit 'from' gibt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the intermediate sight</source>
   <translation>Feld mit dem Zwischenblick</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Of a levelling book; its length stands where that of the fore sight does.</source>
   <translation>Aus einem Nivellierbuch; seine Zielweite steht, wo die des Vorblicks steht.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the coefficient of refraction</source>
   <translation>Feld mit dem Refraktionskoeffizienten</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>For each sight; an empty cell takes that of the day, else REFRACTION.</source>
   <translation>Für jede Visur; eine leere Zelle erhält den des Tages, sonst REFRACTION.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the day</source>
   <translation>Feld mit dem Tag</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Any text; sights of one text share a day.</source>
   <translation>Beliebiger Text; Visuren mit gleichem Text gehören zum selben Tag.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Sights</source>
   <translation>Visuren</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>A table: a row for each sight of a theodolite or total station, for each setup of a level, or for each staff point of a levelling book. Fields with usual names are found, and the log says how each was read.</source>
   <translation>Eine Tabelle: eine Zeile je Visur eines Theodolits oder Tachymeters, je Aufstellung eines Nivelliers oder je Lattenpunkt eines Nivellierbuchs. Felder mit üblichen Namen werden gefunden, und das Protokoll nennt, wie jedes gelesen wurde.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>{} Empty: a field {}.</source>
   <translation>{} Leer: ein Feld {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source> or </source>
   <translation> oder </translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Unit of angles</source>
   <translation>Winkeleinheit</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>degree: 88.3875. dms: degrees, minutes and seconds, 88 23 15. packed: 88.2315 for 88°23'15". gon: 98.2083.</source>
   <translation>degree (Grad): 88.3875. dms (Grad, Minuten und Sekunden): 88 23 15. packed (gepackt): 88.2315 für 88°23'15". gon: 98.2083.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Unit of distances</source>
   <translation>Streckeneinheit</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Empty: as the heights.</source>
   <translation>Leer: wie die Höhen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Coefficient of refraction k</source>
   <translation>Refraktionskoeffizient k</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>The Earth's radius over that of the line of sight. By day over land 0.13 is usual; near warm ground it can be negative. Empty: from a field, for the day, or from reciprocal sights; sights that need one and have none are rejected.</source>
   <translation>Erdradius geteilt durch den Radius der Ziellinie. Tagsüber über Land ist 0.13 üblich; nahe warmem Boden kann k negativ sein. Leer: aus einem Feld, für den Tag oder aus gegenseitigen Visuren; Visuren, die einen brauchen und keinen haben, werden zurückgewiesen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Coefficient of refraction for each day</source>
   <translation>Refraktionskoeffizient je Tag</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Pairs day=k separated by semicolons, for example 2026-05-01=0.13; 2026-05-02=0.08.</source>
   <translation>Paare Tag=k, durch Semikolon getrennt, zum Beispiel 2026-05-01=0.13; 2026-05-02=0.08.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Use k from reciprocal sights</source>
   <translation>k gegenseitiger Visuren verwenden</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Single sights take the mean k that the same day's reciprocal sights give, where no k is stated for the sight or its day.</source>
   <translation>Einseitige Visuren erhalten das mittlere k der gegenseitigen Visuren desselben Tages, wo weder für die Visur noch für den Tag ein k angegeben ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Where horizontal distances lie</source>
   <translation>Wo Horizontalstrecken liegen</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>instrument: at the height of the instrument, as it shows them, the slope distance times the sine of the zenith angle. ellipsoid: arcs on the ellipsoid, as from coordinates (not grid distances: those carry the scale of the projection). On steep lines the two give other heights, 102 mm apart at 3 km and 15°. Empty: refused where it matters by more than 0.1 mm.</source>
   <translation>instrument (Instrument): in Höhe des Instruments, wie dieses sie anzeigt, Schrägstrecke mal Sinus des Zenitwinkels. ellipsoid (Ellipsoid): Bögen auf dem Ellipsoid, wie aus Koordinaten (nicht Strecken der Abbildungsebene: diese enthalten den Abbildungsmaßstab). Auf steilen Linien ergeben die beiden verschiedene Höhen, 102 mm Unterschied bei 3 km und 15°. Leer: abgelehnt, wo es mehr als 0,1 mm ausmacht.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Height of the sights above the ellipsoid</source>
   <translation>Höhe der Visuren über dem Ellipsoid</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>In the unit of heights, midway between the ends of a sight; for HORIZONTAL_AT 'ellipsoid', since an arc there is shorter than the line at height. An error of 100 m changes a rise of 100 m by 1.6 mm. Empty: refused where 100 m matter by more than 0.1 mm.</source>
   <translation>In der Höheneinheit, auf halbem Weg zwischen den Enden einer Visur; für HORIZONTAL_AT 'ellipsoid', da dort ein Bogen kürzer ist als die Linie in der Höhe. Ein Fehler von 100 m ändert einen Anstieg von 100 m um 1,6 mm. Leer: abgelehnt, wo 100 m mehr als 0,1 mm ausmachen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Radius of the Earth (metres)</source>
   <translation>Erdradius (Meter)</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Taken for every sight, in place of that of the points' positions or of LATITUDE; for example 6371000, to repeat a computation made with another radius.</source>
   <translation>Für jede Visur anstelle des Radius am Ort der Punkte oder in LATITUDE; zum Beispiel 6371000, um eine Berechnung mit anderem Radius nachzurechnen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Latitude (degrees)</source>
   <translation>Breite (Grad)</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>For the Earth's radius under the sights, on WGS 84. Empty: 6,371 km; the difference is below 0.6 percent of the correction.</source>
   <translation>Für den Erdradius unter den Visuren, auf WGS 84. Leer: 6371 km; der Unterschied liegt unter 0,6 Prozent der Korrektion.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Collimation of the level (seconds of arc)</source>
   <translation>Ziellinienfehler des Nivelliers (Bogensekunden)</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Positive: the line of sight points up; 2 reads 0.5 mm too high at 50 m. Empty: from the two-peg test, else 0.</source>
   <translation>Positiv: Die Ziellinie zeigt nach oben; 2 liest auf 50 m um 0,5 mm zu hoch ab. Leer: aus der Ziellinienprüfung, sonst 0.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Two-peg test</source>
   <translation>Ziellinienprüfung</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Two setups over the same pegs, each with both readings and both sight lengths in the units of this run, for example 1.476, 1.432, 20, 20; 1.556, 1.472, 50, 10. Its collimation corrects the setups.</source>
   <translation>Zwei Aufstellungen über denselben Pflöcken, jede mit beiden Ablesungen und beiden Zielweiten in den Einheiten dieses Laufs, zum Beispiel 1.476, 1.432, 20, 20; 1.556, 1.472, 50, 10. Der daraus folgende Ziellinienfehler korrigiert die Aufstellungen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Standard deviation of an angle (seconds of arc)</source>
   <translation>Standardabweichung eines Winkels (Bogensekunden)</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Of a zenith or vertical angle as used; 1 is 1.5 mm at 300 m. Empty: sights get no standard deviation.</source>
   <translation>Eines Zenit- oder Höhenwinkels, wie er verwendet wird; 1 ergibt 1,5 mm auf 300 m. Leer: Visuren erhalten keine Standardabweichung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Standard deviation of a staff reading (mm)</source>
   <translation>Standardabweichung einer Lattenablesung (mm)</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>With 0.3 the difference of two readings has 0.4 mm. Empty: setups get no standard deviation.</source>
   <translation>Mit 0.3 hat die Differenz zweier Ablesungen 0,4 mm. Leer: Aufstellungen erhalten keine Standardabweichung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Standard deviation of a distance (mm)</source>
   <translation>Standardabweichung einer Strecke (mm)</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>The part that does not depend on the distance: 2 of an instrument quoted as 2 mm + 3 ppm.</source>
   <translation>Der streckenunabhängige Anteil: 2 bei einem Instrument mit der Angabe 2 mm + 3 ppm.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Standard deviation of a distance (mm/km)</source>
   <translation>Standardabweichung einer Strecke (mm/km)</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Its part that grows with the distance: 3 of the same instrument, 6 mm in 2 km.</source>
   <translation>Der mit der Strecke wachsende Anteil: 3 bei demselben Instrument, 6 mm auf 2 km.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Standard deviation of an instrument or target height (mm)</source>
   <translation>Standardabweichung einer Instrumenten- oder Zielhöhe (mm)</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Of each of the two, as measured with a tape; 1.5 makes 2.1 mm of both together.</source>
   <translation>Jeder der beiden, wie mit dem Maßband gemessen; 1.5 ergibt 2,1 mm für beide zusammen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>0.05 makes 4 mm of a sight of 1 km. It cancels in reciprocal sights of one day, and in setups with sights alike.</source>
   <translation>0.05 ergibt 4 mm bei einer Visur von 1 km. In gegenseitigen Visuren eines Tages hebt es sich auf, ebenso in Aufstellungen mit gleichen Zielweiten.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Height differences</source>
   <translation>Höhenunterschiede</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>A table with a row for each levelled line: from, to, height difference, and length, number of setups or standard deviation. The output of 'Reduce sights' fits.</source>
   <translation>Eine Tabelle mit einer Zeile je nivellierter Linie: von, nach, Höhenunterschied und Länge, Zahl der Aufstellungen oder Standardabweichung. Die Ausgabe von 'Visuren reduzieren' passt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the start</source>
   <translation>Feld mit dem Anfang</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Name of the point where a line starts.</source>
   <translation>Name des Punktes, an dem eine Linie beginnt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the end</source>
   <translation>Feld mit dem Ende</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Name of the point where a line ends.</source>
   <translation>Name des Punktes, an dem eine Linie endet.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the height difference</source>
   <translation>Feld mit dem Höhenunterschied</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Height of the end less that of the start.</source>
   <translation>Höhe am Ende minus Höhe am Anfang.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the length</source>
   <translation>Feld mit der Länge</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Length of the line.</source>
   <translation>Länge der Linie.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the number of setups</source>
   <translation>Feld mit der Zahl der Aufstellungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Setups of the line.</source>
   <translation>Aufstellungen der Linie.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the standard deviation</source>
   <translation>Feld mit der Standardabweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Of the height difference, in the unit of heights.</source>
   <translation>Des Höhenunterschieds, in der Höheneinheit.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Accuracy of the lines</source>
   <translation>Genauigkeit der Linien</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>line: each line's own standard deviation. km: grows with the square root of the length. setup: grows with the square root of the number of setups. equal: one for all. Empty: by what is typed, else by what the fields hold.</source>
   <translation>line (Linie): eigene Standardabweichung jeder Linie. km (Kilometer): wächst mit der Wurzel der Länge. setup (Aufstellung): wächst mit der Wurzel der Zahl der Aufstellungen. equal (gleich): eine für alle. Leer: nach den eingegebenen Werten, sonst nach dem Inhalt der Felder.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Standard deviation over 1 km (mm)</source>
   <translation>Standardabweichung auf 1 km (mm)</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Of a line as it is in the table; at 0.7 a line of 4 km has 1.4 mm. Empty: lengths give the weights, and the scale is estimated from the misclosures.</source>
   <translation>Einer Linie, wie sie in der Tabelle steht; bei 0.7 hat eine Linie von 4 km 1,4 mm. Leer: Die Längen ergeben die Gewichte, und der Maßstab wird aus den Widersprüchen geschätzt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Standard deviation of a setup (mm)</source>
   <translation>Standardabweichung einer Aufstellung (mm)</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>At 0.1 a line of 16 setups has 0.4 mm. Empty: numbers of setups give the weights, and the scale is estimated.</source>
   <translation>Bei 0.1 hat eine Linie mit 16 Aufstellungen 0,4 mm. Leer: Die Zahlen der Aufstellungen ergeben die Gewichte, und der Maßstab wird geschätzt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Standard deviation of every line</source>
   <translation>Standardabweichung jeder Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>In the unit of heights, for WEIGHTS 'equal': 0.001 in metres is 1 mm for each line, long or short. Empty: estimated.</source>
   <translation>In der Höheneinheit, für WEIGHTS 'equal': 0.001 in Metern ist 1 mm für jede Linie, lang oder kurz. Leer: geschätzt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Benchmarks</source>
   <translation>Höhenfestpunkte</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>A table or points with name and height; with a standard deviation where the height is not to be held fixed. Needed, unless the adjustment is free.</source>
   <translation>Eine Tabelle oder Punkte mit Name und Höhe; mit einer Standardabweichung, wo die Höhe nicht festgehalten werden soll. Nötig, außer bei freier Ausgleichung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the benchmark's name</source>
   <translation>Feld mit dem Namen des Höhenfestpunkts</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Empty: a field 'point', 'name', 'station' or 'benchmark'.</source>
   <translation>Leer: ein Feld 'point', 'name', 'station' oder 'benchmark'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the benchmark's height</source>
   <translation>Feld mit der Höhe des Höhenfestpunkts</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Empty: a field 'height', else the point's Z.</source>
   <translation>Leer: ein Feld 'height', sonst das Z des Punktes.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Field with the benchmark's standard deviation</source>
   <translation>Feld mit der Standardabweichung des Höhenfestpunkts</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>In the unit of heights; an empty cell or 0 holds the height fixed. Empty: a field 'sd', else all are fixed.</source>
   <translation>In der Höheneinheit; eine leere Zelle oder 0 hält die Höhe fest. Leer: ein Feld 'sd', sonst sind alle fest.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Free adjustment</source>
   <translation>Freie Ausgleichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Holds one point only in each part of the net, the first benchmark there, and compares the others with their given heights: it shows the lines' own quality and benchmarks that have moved. A part without a benchmark starts from 0.</source>
   <translation>Hält in jedem Teil des Netzes nur einen Punkt fest, den ersten Höhenfestpunkt dort, und vergleicht die anderen mit ihren gegebenen Höhen: Das zeigt die Güte der Linien selbst und Höhenfestpunkte, die sich bewegt haben. Ein Teil ohne Höhenfestpunkt beginnt bei 0.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Point held in the free adjustment</source>
   <translation>Festgehaltener Punkt der freien Ausgleichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Name of a point. Empty: the first benchmark of each part.</source>
   <translation>Name eines Punktes. Leer: der erste Höhenfestpunkt jedes Teils.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Points that get the adjusted heights by their name, and between which the lines are drawn. They need not carry heights. Unit and undulations that their record tells hold for the adjusted heights too.</source>
   <translation>Punkte, die über ihren Namen die ausgeglichenen Höhen erhalten und zwischen denen die Linien gezeichnet werden. Sie brauchen keine Höhen zu tragen. Einheit und Undulationen, die ihr Laufprotokoll nennt, gelten auch für die ausgeglichenen Höhen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>The points of STATIONS with height and sd from the adjustment; made where STATIONS is given.</source>
   <translation>Die Punkte aus STATIONS mit Höhe und Standardabweichung aus der Ausgleichung; entsteht, wenn STATIONS angegeben ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Empty: a field 'point', 'name' or 'station'.</source>
   <translation>Leer: ein Feld 'point', 'name' oder 'station'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Class of levelling</source>
   <translation>Klasse des Nivellements</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Limits n times the square root of the length in kilometres, in mm, for sections and for loops: Federal Geodetic Control Committee, Standards and Specifications for Geodetic Control Networks, 1984. Empty: no limit; for any other, type its n (LIMIT_FACTOR).</source>
   <translation>Grenzen n mal Wurzel aus der Länge in Kilometern, in mm, für Nivellementstrecken und für Schleifen: Federal Geodetic Control Committee, Standards and Specifications for Geodetic Control Networks, 1984: first order class I (erste Ordnung, Klasse I), second order class I (zweite Ordnung, Klasse I), second order class II (zweite Ordnung, Klasse II), third order (dritte Ordnung). Leer: keine Grenze; für jede andere ihr n eingeben (LIMIT_FACTOR).</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Limit n of misclosures (mm over 1 km)</source>
   <translation>Grenze n der Widersprüche (mm auf 1 km)</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Typed instead of a class: a misclosure may reach n times the square root of the length in kilometres. 4 allows 4 mm over 1 km and 8 mm over 4 km.</source>
   <translation>Statt einer Klasse eingegeben: Ein Widerspruch darf n mal Wurzel aus der Länge in Kilometern erreichen. 4 erlaubt 4 mm auf 1 km und 8 mm auf 4 km.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>A table with a row for each point (each station, where STATIONS is given): its covariances with the points of the rows before it, in square millimetres. Heights of one net share errors.</source>
   <translation>Eine Tabelle mit einer Zeile für jeden Punkt (jede Station, wenn STATIONS angegeben ist): seine Kovarianzen mit den Punkten der Zeilen davor, in Quadratmillimetern. Höhen eines Netzes haben gemeinsame Fehler.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>Summary of the adjustment</source>
   <translation>Zusammenfassung der Ausgleichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/parameters.py" />
   <source>One page with tests, misclosures, lines and heights; opens in any browser.</source>
   <translation>Eine Seite mit Tests, Widersprüchen, Linien und Höhen; öffnet in jedem Browser.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/reduced_sights.py" />
   <source>RADIUS is {}; it must be the Earth's radius in metres, such as 6371000.</source>
   <translation>RADIUS ist {}; erwartet wird der Erdradius in Metern, etwa 6371000.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/reduced_sights.py" />
   <source>REFRACTION_DAYS: '{}' is not day=k.</source>
   <translation>REFRACTION_DAYS: '{}' hat nicht die Form Tag=k.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/reduced_sights.py" />
   <source>REFRACTION_DAYS: no row of layer '{}' has the day '{}'.</source>
   <translation>REFRACTION_DAYS: Keine Zeile des Layers '{}' hat den Tag '{}'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/reduced_sights.py" />
   <source>COLLIMATION and PEG_TEST are both given; give one of them.</source>
   <translation>COLLIMATION und PEG_TEST sind beide angegeben; nur eines davon angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/reduced_sights.py" />
   <source>Layer '{}': no row can be used; row {}: {}</source>
   <translation>Layer '{}': Keine Zeile ist brauchbar; Zeile {}: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/reduced_sights.py" />
   <source>The row names no point at one of its ends.</source>
   <translation>Die Zeile nennt an einem ihrer Enden keinen Punkt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/reduced_sights.py" />
   <source>The row starts and ends at '{}'.</source>
   <translation>Die Zeile beginnt und endet bei '{}'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/reduced_sights.py" />
   <source>The row has neither a distance and an angle nor a back and a fore sight.</source>
   <translation>Die Zeile hat weder Strecke und Winkel noch Rück- und Vorblick.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/reduced_sights.py" />
   <source>Layer '{}', field '{}', row {}: this height changes by {} with what the horizontal distance is; say whether it lies at the instrument or is an arc on the ellipsoid (HORIZONTAL_AT).</source>
   <translation>Layer '{}', Feld '{}', Zeile {}: Diese Höhe ändert sich um {} je nachdem, was die Horizontalstrecke ist; angeben, ob sie in Höhe des Instruments liegt oder ein Bogen auf dem Ellipsoid ist (HORIZONTAL_AT).</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/reduced_sights.py" />
   <source>Layer '{}', row {}: over an arc on the ellipsoid this height changes by {} for each 100 m that the line lies higher; give the height of the sights above the ellipsoid (SITE_HEIGHT).</source>
   <translation>Layer '{}', Zeile {}: Über einem Bogen auf dem Ellipsoid ändert sich diese Höhe um {} für je 100 m, die die Linie höher liegt; die Höhe der Visuren über dem Ellipsoid angeben (SITE_HEIGHT).</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/reduced_sights.py" />
   <source>The sight needs a coefficient of refraction k and has none; give REFRACTION.</source>
   <translation>Die Visur braucht einen Refraktionskoeffizienten k und hat keinen; REFRACTION angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/reduced_sights.py" />
   <source>In the levelling book {}.</source>
   <translation>Im Nivellierbuch: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/reduced_sights.py" />
   <source>The section here starts or ends at a point without a name.</source>
   <translation>Die Nivellementstrecke beginnt oder endet hier an einem Punkt ohne Namen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/reduced_sights.py" />
   <source>Layer '{}', row {}: the setup's sights are unlike and there is no coefficient of refraction k; give REFRACTION.</source>
   <translation>Layer '{}', Zeile {}: Die Zielweiten der Aufstellung sind ungleich, und ein Refraktionskoeffizient k fehlt; REFRACTION angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/reduced_sights.py" />
   <source>{} to {}</source>
   <translation>{} bis {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>slope distance</source>
   <translation>Schrägstrecke</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>horizontal distance</source>
   <translation>Horizontalstrecke</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>zenith angle</source>
   <translation>Zenitwinkel</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>vertical angle</source>
   <translation>Höhenwinkel</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>instrument height</source>
   <translation>Instrumentenhöhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>target height</source>
   <translation>Zielhöhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>back sight</source>
   <translation>Rückblick</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>fore sight</source>
   <translation>Vorblick</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>intermediate sight</source>
   <translation>Zwischenblick</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>its length</source>
   <translation>dessen Zielweite</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>length of the fore sight</source>
   <translation>Zielweite des Vorblicks</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>day</source>
   <translation>Tag</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Understood: {} of layer '{}'; {}; heights in {}, distances in {}.</source>
   <translation>Verstanden: {} aus Layer '{}'; {}; Höhen in {}, Strecken in {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>{}</source>
   <translation>{}</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>single trigonometric sight</source>
   <translation>einseitige trigonometrische Visur</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>single trigonometric sights</source>
   <translation>einseitige trigonometrische Visuren</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>reciprocal pair</source>
   <translation>Paar gegenseitiger Visuren</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>reciprocal pairs</source>
   <translation>Paare gegenseitiger Visuren</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>setup of a level</source>
   <translation>Aufstellung eines Nivelliers</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>setups of a level</source>
   <translation>Aufstellungen eines Nivelliers</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>section of the levelling book</source>
   <translation>Strecke des Nivellierbuchs</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>sections of the levelling book</source>
   <translation>Strecken des Nivellierbuchs</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>k {} to {}</source>
   <translation>k {} bis {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>k = {}</source>
   <translation>k = {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>no k needed</source>
   <translation>kein k nötig</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>every height difference has a standard deviation</source>
   <translation>jeder Höhenunterschied hat eine Standardabweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>{} have no standard deviation: state ANGLE_SIGMA and READING_SIGMA</source>
   <translation>{} ohne Standardabweichung: ANGLE_SIGMA und READING_SIGMA angeben</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>height differences</source>
   <translation>Höhenunterschiede</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>no standard deviations, since neither ANGLE_SIGMA nor READING_SIGMA is stated</source>
   <translation>keine Standardabweichungen, da weder ANGLE_SIGMA noch READING_SIGMA angegeben ist</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>{}; {}; {}; {}.</source>
   <translation>{}; {}; {}; {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Earth's radius {} km as given</source>
   <translation>Erdradius {} km wie angegeben</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Earth's radius from the points' positions</source>
   <translation>Erdradius aus der Lage der Punkte</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Earth's radius at the latitude</source>
   <translation>Erdradius in der angegebenen Breite</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Earth's radius {} km</source>
   <translation>Erdradius {} km</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Horizontal distances lie at the instrument (HORIZONTAL_AT).</source>
   <translation>Horizontalstrecken liegen in Höhe des Instruments (HORIZONTAL_AT).</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Horizontal distances are arcs on the ellipsoid (HORIZONTAL_AT).</source>
   <translation>Horizontalstrecken sind Bögen auf dem Ellipsoid (HORIZONTAL_AT).</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Horizontal distances are arcs on the ellipsoid, the sights {} above it (SITE_HEIGHT).</source>
   <translation>Horizontalstrecken sind Bögen auf dem Ellipsoid, die Visuren {} darüber (SITE_HEIGHT).</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>up</source>
   <translation>nach oben</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>down</source>
   <translation>nach unten</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>The level's line of sight points {} by {}″, which is {} in 30 m</source>
   <translation>Die Ziellinie des Nivelliers weicht {} um {}″ ab, das sind {} auf 30 m</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>, standard deviation {}″</source>
   <translation>, Standardabweichung {}″</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Two-peg test: {}{}.</source>
   <translation>Ziellinienprüfung: {}{}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Reciprocal sights: k {} to {}, weighted mean {}.</source>
   <translation>Gegenseitige Visuren: k {} bis {}, gewichtetes Mittel {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Reciprocal sights: k = {}.</source>
   <translation>Gegenseitige Visuren: k = {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source> The level's line of sight is taken as level in it: a two-peg test would tell.</source>
   <translation> Die Ziellinie des Nivelliers gilt dabei als horizontal: Eine Ziellinienprüfung gäbe Auskunft.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Day '{}': k = {} from {}{}.</source>
   <translation>Tag '{}': k = {}, {}{}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>pair</source>
   <translation>Paar</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>pairs</source>
   <translation>Paare</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Greatest correction for curvature and refraction: {} ({} to {}).</source>
   <translation>Größte Korrektion wegen Erdkrümmung und Refraktion: {} ({} nach {}).</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source> Greatest imbalance of sights: {} {} ({} to {}), which made {} by curvature and {} by collimation.</source>
   <translation> Größte Zielweitendifferenz: {} {} ({} nach {}); sie ergab {} durch Erdkrümmung und {} durch Ziellinienfehler.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Layer '{}': most sights point steeply up or down; are the angles zenith or vertical angles, and is their unit right?</source>
   <translation>Layer '{}': Die meisten Visuren weisen steil nach oben oder unten; sind es Zenit- oder Höhenwinkel, und stimmt ihre Einheit?</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Layer '{}': a {} is beyond {} m, longer than a staff: {} {}; check the unit.</source>
   <translation>Layer '{}': {} über {} m, länger als eine Nivellierlatte: {} {}; Einheit prüfen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Reciprocal sights imply an unusual k: {}; a sight, a target height or a name may be wrong.</source>
   <translation>Aus gegenseitigen Visuren folgt ein ungewöhnliches k: {}; eine Visur, eine Zielhöhe oder ein Name kann falsch sein.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>{} to {} k = {}</source>
   <translation>{} nach {} k = {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Layer '{}', rows {} and {}: sights both ways with lengths that differ by more than 1 percent are not combined.</source>
   <translation>Layer '{}', Zeilen {} und {}: Gegenseitige Visuren, deren Längen sich um mehr als 1 Prozent unterscheiden, werden nicht zusammengefasst.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>{} of a level without both sight lengths: nothing is corrected there.</source>
   <translation>{} eines Nivelliers ohne beide Zielweiten: Dort wird nichts korrigiert.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Layer '{}', field '{}': the zenith angles are read in {} (ANGLE_UNIT), and look like {}: their middle is {}, and a level sight has {} in gon, {} in degrees; check the unit.</source>
   <translation>Layer '{}', Feld '{}': Die Zenitwinkel werden in {} gelesen (ANGLE_UNIT), sehen aber nach {} aus: Ihr Median ist {}, und eine horizontale Visur hat {} in Gon, {} in Grad; Einheit prüfen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>gon</source>
   <translation>Gon</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>degrees</source>
   <translation>Grad</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>Layer '{}', row {} is rejected: {}</source>
   <translation>Layer '{}', Zeile {} zurückgewiesen: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>{} rejected; see REJECTED.</source>
   <translation>{} zurückgewiesen; siehe REJECTED.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>more row is</source>
   <translation>weitere Zeile ist</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_messages.py" />
   <source>more rows are</source>
   <translation>weitere Zeilen sind</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_table.py" />
   <source>The coefficient of refraction '{}' is not a number near 0, such as 0.13.</source>
   <translation>Der Refraktionskoeffizient '{}' ist keine Zahl nahe 0, wie etwa 0.13.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_table.py" />
   <source>Layer '{}' has no fields 'from' and 'to', nor a field 'point' of a levelling book; choose them (FROM_FIELD, TO_FIELD).</source>
   <translation>Layer '{}' hat weder die Felder 'from' und 'to' noch ein Feld 'point' eines Nivellierbuchs; Felder wählen (FROM_FIELD, TO_FIELD).</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_table.py" />
   <source>Layer '{}' has angles but no distance; choose the field and say whether it is along the line of sight (SLOPE_FIELD) or horizontal (HORIZONTAL_FIELD).</source>
   <translation>Layer '{}' hat Winkel, aber keine Strecke; das Feld wählen und damit angeben, ob sie längs der Ziellinie (SLOPE_FIELD) oder horizontal (HORIZONTAL_FIELD) gilt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_table.py" />
   <source>Layer '{}' has neither a distance and an angle nor a back and a fore sight; it has {}. Choose the fields.</source>
   <translation>Layer '{}' hat weder Strecke und Winkel noch Rück- und Vorblick; vorhanden: {}. Felder wählen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_table.py" />
   <source>Layer '{}' has a field 'point' but no back and fore sight; choose them (BACK_FIELD, FORE_FIELD).</source>
   <translation>Layer '{}' hat ein Feld 'point', aber keinen Rück- und Vorblick; Felder wählen (BACK_FIELD, FORE_FIELD).</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_table.py" />
   <source>length of the back sight</source>
   <translation>Zielweite des Rückblicks</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_table.py" />
   <source>coefficient of refraction</source>
   <translation>Refraktionskoeffizient</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sight_table.py" />
   <source>The {} '{}' is negative or infinite.</source>
   <translation>{} '{}' ist negativ oder unendlich.</translation>
  </message>
  <message>
   <location filename="../../algorithms/levelling/sights_run.py" />
   <source>Rejected rows</source>
   <translation>Zurückgewiesene Zeilen</translation>
  </message>
  <message>
   <location filename="../../algorithms/measure_stations.py" />
   <source>Measure chainage and offset</source>
   <translation>Stationierung und Querabstand messen</translation>
  </message>
  <message>
   <location filename="../../algorithms/measure_stations.py" />
   <source>Measures points against the axis they belong to: chainage along it and offset from it, positive to the right looking up-chainage, on the ellipsoid at the chainage height. A point beyond an end gets a chainage beyond it, negative before the origin. A point within 0.01 m of equally near to several axes gets a row for each.

Points farther from every axis than the greatest distance stay, without chainage.

Points of any reference system do: neither the scale of a projection nor the bend of its straight lines enters. Where they bring standard deviations of east and north, 'sd_line' is what these are across the axis; 'Fit a straight line or plane' takes it with LINE.</source>
   <translation>Misst Punkte zu der Achse, zu der sie gehören: Stationierung entlang der Achse und Querabstand von ihr, in Stationierungsrichtung nach rechts positiv, auf dem Ellipsoid in der Stationierungshöhe. Ein Punkt jenseits eines Endes erhält eine Stationierung darüber hinaus, vor dem Anfang eine negative. Ein Punkt, der auf 0,01 m gleich nahe an mehreren Achsen liegt, erhält für jede eine Zeile.

Punkte, die weiter als der größte Abstand von jeder Achse entfernt sind, bleiben erhalten, ohne Stationierung.

Punkte in jedem Bezugssystem sind möglich: Weder der Maßstab einer Projektion noch die Krümmung ihrer geraden Linien geht ein. Bringen sie Standardabweichungen von Ost und Nord mit, so gibt 'sd_line' an, was diese quer zur Achse bedeuten; 'Gerade oder Ebene einpassen' übernimmt es mit LINE.</translation>
  </message>
  <message>
   <location filename="../../algorithms/measure_stations.py" />
   <source>linear referencing</source>
   <translation>lineare Referenzierung</translation>
  </message>
  <message>
   <location filename="../../algorithms/measure_stations.py" />
   <source>Points farther from every axis stay in the output without axis and chainage.</source>
   <translation>Punkte, die weiter von jeder Achse entfernt sind, bleiben ohne Achse und Stationierung in der Ausgabe.</translation>
  </message>
  <message>
   <location filename="../../algorithms/measure_stations.py" />
   <source>Measured points</source>
   <translation>Gemessene Punkte</translation>
  </message>
  <message>
   <location filename="../../algorithms/measure_stations.py" />
   <source>The points with axis, station, chainage and offset: -0.35 is 0.35 to the left.</source>
   <translation>Die Punkte mit Achse, Station, Stationierung und Querabstand: -0.35 liegt 0,35 links.</translation>
  </message>
  <message>
   <location filename="../../algorithms/place_stations.py" />
   <source>Place a height list along an axis</source>
   <translation>Höhenliste entlang einer Achse verorten</translation>
  </message>
  <message>
   <location filename="../../algorithms/place_stations.py" />
   <source>Puts the rows of a height list on the map: each row's station is measured along its axis, its offset across it, on the ellipsoid at the chainage height.

Station notation: 12+50 has two digits after the plus and counts stations of 100 units; 1+250 has three and counts stations of 1000; a bare number is a distance; a sign or a label such as Sta or Ch may stand before it. Offsets are positive to the right looking up-chainage; some exchange formats count left positive: check yours.

Lists are read as people keep them: decimal commas, thousands in groups, feet and inches with fractions, a heading further down, blank and comment rows, an axis named once above its rows. The log says how each column was read. Readings that look like slips (digits exchanged, a slipped decimal point, a wrong unit, a station out of order) are named with their rows; nothing is changed.

A unit in a heading counts, as in 'Elev (ft)'; one that the form contradicts is refused. Units and height system stated here go with the points: later steps take them from there.

Undulations, where given, serve the chainage height only here.

A row that cannot be placed goes to REJECTED with its row number and the reason. Without that output the log names them.</source>
   <translation>Bringt die Zeilen einer Höhenliste auf die Karte: Die Station jeder Zeile wird entlang ihrer Achse abgetragen, der Querabstand quer dazu, auf dem Ellipsoid in der Stationierungshöhe.

Stationsangabe: 12+50 hat zwei Ziffern nach dem Plus und zählt Stationen zu 100 Einheiten; 1+250 hat drei und zählt Stationen zu 1000; eine bloße Zahl ist eine Entfernung; ein Vorzeichen oder eine Bezeichnung wie Sta oder Ch darf davor stehen. Querabstände sind in Stationierungsrichtung nach rechts positiv; manche Austauschformate zählen links positiv: die eigenen Daten prüfen.

Listen werden so gelesen, wie sie geführt werden: Dezimalkomma, Tausendergruppen, Fuß und Zoll mit Brüchen, eine Kopfzeile weiter unten, leere Zeilen und Kommentarzeilen, eine Achse, die einmal über ihren Zeilen genannt ist. Das Protokoll sagt, wie jede Spalte gelesen wurde. Ablesungen, die nach Versehen aussehen (vertauschte Ziffern, verrutschtes Komma, falsche Einheit, Station außer der Reihe), werden mit ihren Zeilen genannt; geändert wird nichts.

Eine Einheit in der Kopfzeile gilt, wie in 'Elev (ft)'; widerspricht ihr das Formular, wird sie abgelehnt. Hier angegebene Einheiten und Höhensystem gehen mit den Punkten: Spätere Schritte übernehmen sie von dort.

Undulationen, wo angegeben, dienen hier nur der Stationierungshöhe.

Eine Zeile, die sich nicht verorten lässt, geht mit Zeilennummer und Grund nach REJECTED. Ohne diese Ausgabe nennt sie das Protokoll.</translation>
  </message>
  <message>
   <location filename="../../algorithms/place_stations.py" />
   <source>height list</source>
   <translation>Höhenliste</translation>
  </message>
  <message>
   <location filename="../../algorithms/place_stations.py" />
   <source>place</source>
   <translation>verorten</translation>
  </message>
  <message>
   <location filename="../../algorithms/place_stations.py" />
   <source>Placed stations</source>
   <translation>Verortete Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/place_stations.py" />
   <source>A point for each row that could be placed, with its columns; stations with no height stay.</source>
   <translation>Ein Punkt für jede Zeile, die sich verorten ließ, mit ihren Spalten; Stationen ohne Höhe bleiben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/place_stations.py" />
   <source>Rows that could not be placed, with their number, counted from 1, and the reason.</source>
   <translation>Zeilen, die sich nicht verorten ließen, mit ihrer Nummer, gezählt ab 1, und dem Grund.</translation>
  </message>
  <message>
   <location filename="../../algorithms/place_stations.py" />
   <source>Placed rows</source>
   <translation>Verortete Zeilen</translation>
  </message>
  <message>
   <location filename="../../algorithms/reduce_sights.py" />
   <source>Reduce sights for curvature and refraction</source>
   <translation>Visuren wegen Erdkrümmung und Refraktion reduzieren</translation>
  </message>
  <message>
   <location filename="../../algorithms/reduce_sights.py" />
   <source>Turns the rows of a field book into height differences: sights of a theodolite or total station (distance, zenith or vertical angle, instrument and target heights), setups of a level (back and fore sight, with their lengths), or a levelling book with one row for each staff point.

A sight of length D is corrected by (1 − k) D²/2R, D at the instrument: 68 mm at 1 km with k = 0.13; a distance that is an arc on the ellipsoid has a formula of its own, and on steep lines you say which of the two it is. A setup of a level is corrected by that of its fore sight less that of its back sight, and for the collimation that a two-peg test gives. Sights both ways between two points are combined: curvature, refraction and collimation cancel, and the coefficient k that they imply is reported. A level counts as sighting both ways where its fore sight is more than five times its back sight.

Standard deviations come by propagation from what you state of the instruments and of k; nothing is assumed. Setups of one back sight with several fore sights share its error, which is not followed up.

A row that cannot be used goes to REJECTED with its row number and the reason. The output fits 'Adjust levelled height differences'. Results are for review; a licensed surveyor or engineer decides.</source>
   <translation>Macht aus den Zeilen eines Feldbuchs Höhenunterschiede: aus Visuren mit Theodolit oder Tachymeter (Strecke, Zenit- oder Höhenwinkel, Instrumenten- und Zielhöhe), aus Aufstellungen eines Nivelliers (Rück- und Vorblick mit ihren Zielweiten) oder aus einem Nivellierbuch mit einer Zeile für jeden Lattenpunkt.

Eine Visur der Länge D wird um (1 − k) D²/2R korrigiert, D in Höhe des Instruments: 68 mm auf 1 km mit k = 0,13; für eine Strecke, die ein Bogen auf dem Ellipsoid ist, gilt eine eigene Formel, und auf steilen Linien ist anzugeben, welche von beiden vorliegt. Eine Aufstellung des Nivelliers wird um die Korrektion ihres Vorblicks abzüglich der ihres Rückblicks korrigiert, und um den Ziellinienfehler aus einer Ziellinienprüfung. Gegenseitige Visuren zwischen zwei Punkten werden zusammengefasst: Erdkrümmung, Refraktion und Ziellinienfehler heben sich auf, und der Koeffizient k, der daraus folgt, wird mitgeteilt. Beim Nivellier zählt eine Aufstellung als gegenseitig, wenn ihr Vorblick mehr als fünfmal so lang ist wie ihr Rückblick.

Standardabweichungen folgen durch Fehlerfortpflanzung aus den Angaben zu den Instrumenten und zu k; angenommen wird nichts. Aufstellungen mit einem Rückblick und mehreren Vorblicken haben dessen Fehler gemeinsam; das wird nicht weiterverfolgt.

Eine Zeile, die nicht brauchbar ist, geht mit Zeilennummer und Grund nach REJECTED. Die Ausgabe passt zu 'Nivellierte Höhenunterschiede ausgleichen'. Die Ergebnisse dienen der Prüfung; es entscheidet eine zugelassene Fachperson für Vermessung oder Ingenieurwesen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/reduce_sights.py" />
   <source>field book</source>
   <translation>Feldbuch</translation>
  </message>
  <message>
   <location filename="../../algorithms/reduce_sights.py" />
   <source>reciprocal</source>
   <translation>gegenseitig</translation>
  </message>
  <message>
   <location filename="../../algorithms/reduce_sights.py" />
   <source>sight</source>
   <translation>Visur</translation>
  </message>
  <message>
   <location filename="../../algorithms/reduce_sights.py" />
   <source>total station</source>
   <translation>Tachymeter</translation>
  </message>
  <message>
   <location filename="../../algorithms/reduce_sights.py" />
   <source>two-peg test</source>
   <translation>Ziellinienprüfung</translation>
  </message>
  <message>
   <location filename="../../algorithms/reduce_sights.py" />
   <source>A row for each line: corrected height difference, standard deviation, and what was added for curvature, 68 mm at 1 km with k = 0.13.</source>
   <translation>Eine Zeile für jede Linie: korrigierter Höhenunterschied, Standardabweichung und die Korrektion wegen Erdkrümmung, 68 mm auf 1 km mit k = 0,13.</translation>
  </message>
  <message>
   <location filename="../../algorithms/reduce_sights.py" />
   <source>Rows that could not be used, with their number, counted from 1, and the reason.</source>
   <translation>Zeilen, die nicht brauchbar waren, mit ihrer Nummer, gezählt ab 1, und dem Grund.</translation>
  </message>
  <message>
   <location filename="../../algorithms/reduce_sights.py" />
   <source>Reciprocal pairs</source>
   <translation>Gegenseitige Paare</translation>
  </message>
  <message>
   <location filename="../../algorithms/reduce_sights.py" />
   <source>Mean k of the reciprocal sights</source>
   <translation>Mittleres k der gegenseitigen Visuren</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/commands.py" />
   <source>not recorded</source>
   <translation>nicht aufgezeichnet</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Which shape was built was not tested: no table of curvature was supplied.</source>
   <translation>Welche Form gebaut wurde, ist nicht getestet: Es wurde keine Krümmungstabelle angegeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Map</source>
   <translation>Karte</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>What was computed</source>
   <translation>Was berechnet wurde</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Terms and signs</source>
   <translation>Begriffe und Vorzeichen</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Cautions</source>
   <translation>Warnhinweise</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Prepared by</source>
   <translation>Erstellt von</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Checked by</source>
   <translation>Geprüft von</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Project</source>
   <translation>Projekt</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Structure</source>
   <translation>Bauwerk</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Date of the report</source>
   <translation>Datum des Berichts</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Profile in both views</source>
   <translation>Längsschnitt in beiden Ansichten</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>All stations</source>
   <translation>Alle Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>{}: there are no two stations with a chainage and a design height, so there is no profile.</source>
   <translation>{}: Es gibt keine zwei Stationen mit Stationierung und Soll-Höhe, deshalb keinen Längsschnitt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Profiles of the first {} of {} are shown.</source>
   <translation>Gezeigt sind die Längsschnitte der ersten {} von {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>without {} doubted</source>
   <translation>ohne {} angezweifelte</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Within</source>
   <translation>Innerhalb</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Residuals, as-built minus design. St. dev. is the standard deviation about the mean.</source>
   <translation>Abweichungen, Ist minus Soll. Std.-Abw. ist die Standardabweichung um das Mittel.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Statistics</source>
   <translation>Statistik</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Straightness: not given, since no reference was supplied.</source>
   <translation>Geradheit: nicht angegeben, da kein Bezug angegeben wurde.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Straightness: not given, since the reference is a plane; it belongs to a line (FIT 'line').</source>
   <translation>Geradheit: nicht angegeben, da der Bezug eine Ebene ist; sie gehört zu einer Geraden (FIT 'line').</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Vertical RMS ({})</source>
   <translation>Vertikal RMS ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Vertical range ({})</source>
   <translation>Vertikal Spannw. ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Lateral RMS ({})</source>
   <translation>Seitlich RMS ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Lateral range ({})</source>
   <translation>Seitlich Spannw. ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Combined RMS ({})</source>
   <translation>Kombiniert RMS ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Combined greatest ({})</source>
   <translation>Kombiniert größte ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Vertical zone ({})</source>
   <translation>Zone vertikal ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Lateral zone ({})</source>
   <translation>Zone seitlich ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Zone, cylinder ({})</source>
   <translation>Zone, Zylinder ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Straightness: departures from the best-fit line, blunders set aside. Zone: minimum zone by ISO 12780-1 and ISO 1101, the least distance between two parallel lines, or the least diameter of a cylinder, that holds all of them.</source>
   <translation>Geradheit: Abweichungen von der ausgleichenden Geraden, ohne ausgesonderte grobe Fehler. Zone: Minimumzone nach ISO 12780-1 und ISO 1101, der kleinste Abstand zweier paralleler Geraden oder der kleinste Durchmesser eines Zylinders, die alle einschließen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>suspected; stretch that moved</source>
   <translation>vermutet; bewegte Strecke</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>{}, w = {}</source>
   <translation>{}, w = {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>decision: {}</source>
   <translation>Entscheidung: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>counts</source>
   <translation>zählt</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Station ({})</source>
   <translation>Station ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>As-built ({})</source>
   <translation>Ist ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Design ({})</source>
   <translation>Soll ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Residual ({})</source>
   <translation>Abweichung ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Curvature effect ({})</source>
   <translation>Krümmungseinfluss ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Probability within tolerance</source>
   <translation>Wahrscheinlichkeit innerhalb der Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Flag and decision</source>
   <translation>Markierung und Entscheidung</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Stations needing attention</source>
   <translation>Zu prüfende Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Blunders: not tested; no tested stations were supplied.</source>
   <translation>Grobe Fehler: nicht getestet; es wurden keine getesteten Stationen angegeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Blunders: the test flags {} of {}. So many mean that the structure has another shape than the one fitted, so these flags are not taken for blunders.</source>
   <translation>Grobe Fehler: Der Test markiert {} von {}. So viele bedeuten, dass das Bauwerk eine andere Form hat als die eingepasste; diese Markierungen gelten deshalb nicht als grobe Fehler.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Blunders in line: the test flags {} of {}. So many mean that the structure runs otherwise in plan than the line fitted, so these flags are not taken for blunders.</source>
   <translation>Grobe Fehler in der Linie: Der Test markiert {} von {}. So viele bedeuten, dass das Bauwerk im Grundriss anders verläuft als die eingepasste Linie; diese Markierungen gelten deshalb nicht als grobe Fehler.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Decisions: none were supplied.</source>
   <translation>Entscheidungen: Es wurden keine angegeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>No station is out of tolerance, flagged or without an as-built height.</source>
   <translation>Keine Station ist außerhalb der Toleranz, markiert oder ohne Ist-Höhe.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Out of tolerance, flagged, decided about or without an as-built height; the greatest residual first.</source>
   <translation>Außerhalb der Toleranz, markiert, mit Entscheidung oder ohne Ist-Höhe; die größte Abweichung zuerst.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Out of tolerance in height or in line, flagged, decided about or without an as-built height; the greatest residual first.</source>
   <translation>In der Höhe oder in der Linie außerhalb der Toleranz, markiert, mit Entscheidung oder ohne Ist-Höhe; die größte Abweichung zuerst.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Shaded, and marked 'counts': counted against the structure.</source>
   <translation>Hinterlegt und mit 'zählt' bezeichnet: zulasten des Bauwerks gezählt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>The axis</source>
   <translation>Die Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Designs of the first {} axes are shown; the summary has them all.</source>
   <translation>Gezeigt sind die Entwürfe der ersten {} Achsen; die Zusammenfassung enthält alle.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Reproducing the results</source>
   <translation>Ergebnisse reproduzieren</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>The layers carry no record of the runs that made them, so the calls are not known.</source>
   <translation>Die Layer tragen kein Laufprotokoll, deshalb sind die Aufrufe nicht bekannt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>The same inputs, versions and calls give the same numbers. Recorded with: {}.</source>
   <translation>Gleiche Eingaben, Versionen und Aufrufe ergeben gleiche Zahlen. Aufgezeichnet mit: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>On the command line</source>
   <translation>Auf der Kommandozeile</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>In Python</source>
   <translation>In Python</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/content.py" />
   <source>Axis '{}': {}.</source>
   <translation>Achse '{}': {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/data.py" />
   <source>row {}</source>
   <translation>Zeile {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/data.py" />
   <source>{} of {}</source>
   <translation>{} auf {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/data.py" />
   <source>Layer '{}': no station has a residual; there is nothing to review.</source>
   <translation>Layer '{}': Keine Station hat eine Abweichung; es gibt nichts zu prüfen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/data.py" />
   <source>Layer '{}' ({}) lacks the field '{}'.</source>
   <translation>Layer '{}' ({}): Das Feld '{}' fehlt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/data.py" />
   <source>SIGMA is {}; it must be greater than zero, or empty.</source>
   <translation>SIGMA ist {}; erlaubt ist ein Wert größer als null oder leer.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/data.py" />
   <source>Layer '{}', field '{}': a standard deviation is {}; it must be positive.</source>
   <translation>Layer '{}', Feld '{}': Eine Standardabweichung ist {}; sie muss positiv sein.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/data.py" />
   <source>the stations' field '{}'</source>
   <translation>Feld '{}' der Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/data.py" />
   <source>as stated for this report</source>
   <translation>wie für diesen Bericht angegeben</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/data.py" />
   <source>as stated for the run that tested the stations</source>
   <translation>wie für den Lauf angegeben, der die Stationen getestet hat</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/data.py" />
   <source>Axis {}</source>
   <translation>Achse {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/data.py" />
   <source>Structure of {} and {}</source>
   <translation>Bauwerk aus {} und {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/data.py" />
   <source>Structure of {}</source>
   <translation>Bauwerk aus {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>not recorded: the stations carry no record of their run</source>
   <translation>nicht aufgezeichnet: Die Stationen tragen kein Laufprotokoll</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>layer '{}'</source>
   <translation>Layer '{}'</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>Surveyed</source>
   <translation>Gemessen</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>{} in the unit of heights</source>
   <translation>{} in der Höheneinheit</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>Source of the undulations</source>
   <translation>Herkunft der Undulationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>Unit of chainages</source>
   <translation>Einheit der Stationierung</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>Coordinate reference system</source>
   <translation>Koordinatenbezugssystem</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>a = {} m, 1/f = {}</source>
   <translation>a = {} m, 1/f = {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>sphere of {} m</source>
   <translation>Kugel von {} m</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>Ellipsoid</source>
   <translation>Ellipsoid</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>not stated</source>
   <translation>nicht angegeben</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>Computed with</source>
   <translation>Berechnet mit</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>Reported with</source>
   <translation>Bericht erstellt mit</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>{}: {} stations, {} set aside, global test {}</source>
   <translation>{}: {} Stationen, {} ausgesondert, Globaltest {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>Reference {}</source>
   <translation>Bezug {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>; {} {}</source>
   <translation>; {}: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>; {} at latitude {}°, longitude {}°</source>
   <translation>; {} bei Breite {}°, Länge {}°</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>, standard deviation {} {}</source>
   <translation>, Standardabweichung {} {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>Gravity</source>
   <translation>Schwere</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>normal on GRS 80: still water, whose heights fall towards the poles</source>
   <translation>Normalschwere des GRS 80: ruhendes Wasser, dessen Höhen zu den Polen hin abnehmen</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>Control {}</source>
   <translation>Zwangspunkt {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>{} (rise per chainage)</source>
   <translation>{} (Anstieg je Stationierung)</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>Chainage height, ellipsoidal</source>
   <translation>Stationierungshöhe, ellipsoidisch</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>Horizon</source>
   <translation>Horizont</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>of the geoid</source>
   <translation>des Geoids</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>of the ellipsoid</source>
   <translation>des Ellipsoids</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>stated</source>
   <translation>angegeben</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>the as-built height there</source>
   <translation>die Ist-Höhe dort</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/facts.py" />
   <source>{}, {} {} ({})</source>
   <translation>{}, {} {} ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line.py" />
   <source>{} is given, but layer '{}' has no lateral departures (fields 'lateral' and 'side'); run 'Design heights and residuals' with LINE first.</source>
   <translation>{} ist angegeben, aber Layer '{}' hat keine Querabweichungen (Felder 'lateral' und 'side'); zuerst 'Soll-Höhen und Abweichungen' mit LINE ausführen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_chart.py" />
   <source>lateral ({})</source>
   <translation>quer ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_chart.py" />
   <source>At the bottom the line seen from above, dashed: left of it up, right of it down.</source>
   <translation>Unten die Linie von oben gesehen, gestrichelt: links davon nach oben, rechts davon nach unten.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_chart.py" />
   <source>Filled squares lie beyond its tolerance.</source>
   <translation>Gefüllte Quadrate liegen jenseits ihrer Toleranz.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>No tolerance of the line was stated for {}, so there is no verdict on it: the lateral departures of {} are given as they are, RMS {}, greatest {} at {}.</source>
   <translation>{}: Für die Linie ist keine Toleranz angegeben, deshalb gibt es kein Urteil darüber; die Querabweichungen von {} stehen da, wie sie sind, RMS {}, größte {} bei {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>{} is not in line within {}: {}.</source>
   <translation>{} liegt nicht innerhalb {} in der Flucht: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>{} does not appear to be in line within {}, but the positions are not accurate enough to be certain: {}.</source>
   <translation>{} liegt offenbar nicht innerhalb {} in der Flucht, aber die Lagen sind für eine sichere Aussage nicht genau genug: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>Whether {} is in line within {} cannot be said yet: {}, and every position beyond it is doubted.</source>
   <translation>Ob {} innerhalb {} in der Flucht liegt, lässt sich noch nicht sagen: {}, und jede Lage außerhalb ist angezweifelt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>{} is not in line within {} everywhere, but every departure has been accepted: {}.</source>
   <translation>{} liegt nicht überall innerhalb {} in der Flucht, aber jede Überschreitung wurde so belassen: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>{} is in line within {} as measured, but some stations lie too near the limit to be certain: {}.</source>
   <translation>{} liegt nach der Messung innerhalb {} in der Flucht, aber einige Stationen liegen für eine sichere Aussage zu nahe an der Grenze: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>{} is in line within {}: {}.</source>
   <translation>{} liegt innerhalb {} in der Flucht: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>{} of {} are within it</source>
   <translation>{} von {} liegen darin</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>Beyond it, but doubted by decision and not counted against the structure: {}.</source>
   <translation>Außerhalb, aber durch Entscheidung angezweifelt und nicht zulasten des Bauwerks gezählt: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>Beyond it, but doubted (suspected blunders in line, or by decision) and not counted against the structure: {}.</source>
   <translation>Außerhalb, aber angezweifelt (vermutete grobe Fehler in der Linie oder durch Entscheidung) und nicht zulasten des Bauwerks gezählt: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>Beyond the tolerance of the line: {}.</source>
   <translation>Außerhalb der Toleranz der Linie: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>Beyond it and accepted by decision: {}.</source>
   <translation>Außerhalb und durch Entscheidung so belassen: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>{} to {} stand right together, {} by up to {}</source>
   <translation>{} bis {} liegen gemeinsam rechts, {} um bis zu {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>{} to {} stand left together, {} by up to {}</source>
   <translation>{} bis {} liegen gemeinsam links, {} um bis zu {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>The line is the axis as drawn: it judges only where that axis was surveyed or designed.</source>
   <translation>Die Linie ist die gezeichnete Achse: Sie gibt nur dort ein Urteil her, wo die Achse gemessen oder entworfen ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>Certainty of the line: there is none to state without a tolerance.</source>
   <translation>Sicherheit der Linie: Ohne Toleranz ist keine anzugeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>Certainty of the line: not known, since no accuracy of the positions was stated; the numbers are taken as they stand.</source>
   <translation>Sicherheit der Linie: nicht bekannt, da keine Genauigkeit der Lagen angegeben ist; die Zahlen gelten, wie sie dastehen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>Certainty of the line: not known, since its tolerance is not recorded with the stations; the sides are taken as they stand.</source>
   <translation>Sicherheit der Linie: nicht bekannt, da ihre Toleranz bei den Stationen nicht aufgezeichnet ist; die Seiten gelten, wie sie dastehen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>Certainty of the line: a lateral position has a standard deviation of {} ({}). </source>
   <translation>Sicherheit der Linie: Eine seitliche Lage hat die Standardabweichung {} ({}). </translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source> The errors of the stations that the line runs through are counted.</source>
   <translation> Die Fehler der Stationen, durch die die Linie läuft, sind berücksichtigt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source> The line comes from these stations; its own errors are not counted.</source>
   <translation> Die Linie folgt aus diesen Stationen; ihre eigenen Fehler sind nicht berücksichtigt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source> The line is taken as exact.</source>
   <translation> Die Linie gilt als fehlerfrei.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>{} of {} with both are</source>
   <translation>{} von {} mit beiden Werten liegen darin</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>greatest {} at {}</source>
   <translation>größte {} bei {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>Height and line together, √(v² + l²), are not within the radial tolerance of {}: {}, {}.</source>
   <translation>Höhe und Linie zusammen, √(v² + l²), liegen nicht innerhalb der radialen Toleranz von {}: {}, {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>Height and line together, √(v² + l²), do not appear to be within the radial tolerance of {}, but are not accurate enough to be certain: {}, {}.</source>
   <translation>Höhe und Linie zusammen, √(v² + l²), liegen offenbar nicht innerhalb der radialen Toleranz von {}, sind aber für eine sichere Aussage nicht genau genug: {}, {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>Whether height and line together, √(v² + l²), are within the radial tolerance of {} cannot be said yet, since all beyond it are doubted: {}, {}.</source>
   <translation>Ob Höhe und Linie zusammen, √(v² + l²), innerhalb der radialen Toleranz von {} liegen, lässt sich noch nicht sagen, da alle außerhalb angezweifelt sind: {}, {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>Height and line together, √(v² + l²), are not within the radial tolerance of {} everywhere, but every departure has been accepted: {}, {}.</source>
   <translation>Höhe und Linie zusammen, √(v² + l²), liegen nicht überall innerhalb der radialen Toleranz von {}, aber jede Überschreitung wurde so belassen: {}, {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>Height and line together, √(v² + l²), are within the radial tolerance of {} as measured, but some stations lie too near the limit to be certain: {}, {}.</source>
   <translation>Höhe und Linie zusammen, √(v² + l²), liegen nach der Messung innerhalb der radialen Toleranz von {}, aber einige Stationen liegen für eine sichere Aussage zu nahe an der Grenze: {}, {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>Height and line together, √(v² + l²), are within the radial tolerance of {}: {}, {}.</source>
   <translation>Höhe und Linie zusammen, √(v² + l²), liegen innerhalb der radialen Toleranz von {}: {}, {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source> Beyond it: {}.</source>
   <translation> Außerhalb: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source> Their certainty is not known, since the accuracy of heights and positions was not stated.</source>
   <translation> Ihre Sicherheit ist nicht bekannt, da die Genauigkeit von Höhen und Lagen nicht angegeben ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>lateral departure</source>
   <translation>Querabweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>distance of the station from the line in plan, + to the right looking up-chainage</source>
   <translation>Abstand der Station von der Linie im Grundriss, + in Stationierungsrichtung nach rechts</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>side</source>
   <translation>Seite</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>left or right: beyond the tolerance of the line; within: not beyond it</source>
   <translation>left (links) oder right (rechts): jenseits der Toleranz der Linie; within: innerhalb</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>together</source>
   <translation>zusammen</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_sentences.py" />
   <source>√(v² + l²) of residual v and lateral departure l, against the radial tolerance</source>
   <translation>√(v² + l²) aus Abweichung v und Querabweichung l, verglichen mit der radialen Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_tables.py" />
   <source>Lateral departures from the line, + is right. St. dev. is the standard deviation about the mean.</source>
   <translation>Querabweichungen von der Linie, + ist rechts. Std.-Abw. ist die Standardabweichung um das Mittel.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_tables.py" />
   <source>RMS ({})</source>
   <translation>RMS ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_tables.py" />
   <source>Greatest ({})</source>
   <translation>Größte ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_tables.py" />
   <source>at</source>
   <translation>bei</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_tables.py" />
   <source>Beyond</source>
   <translation>Außerhalb</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_tables.py" />
   <source>Height and line together, √(v² + l²), against the radial tolerance of {}.</source>
   <translation>Höhe und Linie zusammen, √(v² + l²), verglichen mit der radialen Toleranz von {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_tables.py" />
   <source>Lateral ({})</source>
   <translation>Quer ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/line_tables.py" />
   <source>Probability within tolerance, line</source>
   <translation>Wahrscheinlichkeit in der Toleranz, Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/map.py" />
   <source>The imagery '{}' does not cover the stations, so the map has no background.</source>
   <translation>Das Luftbild '{}' deckt die Stationen nicht ab, deshalb hat die Karte keinen Hintergrund.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/map.py" />
   <source>The map could not be drawn.</source>
   <translation>Die Karte ließ sich nicht zeichnen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/map.py" />
   <source>Other</source>
   <translation>Sonstige</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/map_layers.py" />
   <source>Beyond the tolerance of the line</source>
   <translation>Jenseits der Toleranz der Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/map_layers.py" />
   <source>Layer '{}', row {}: a vertex has no place on the map of the stations.</source>
   <translation>Layer '{}', Zeile {}: Ein Stützpunkt hat keinen Ort auf der Karte der Stationen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/map_layers.py" />
   <source>The imagery '{}' cannot be read.</source>
   <translation>Das Luftbild '{}' lässt sich nicht lesen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/map_layers.py" />
   <source>The imagery '{}' has no coordinate reference system; set it first.</source>
   <translation>Das Luftbild '{}' hat kein Koordinatenbezugssystem; zuerst eines festlegen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/old_inputs.py" />
   <source>Layer '{}' ({}) is older than what it was made from: {}. What is said from it may no longer hold.</source>
   <translation>Layer '{}' ({}) ist älter als das, woraus er entstand: {}. Aussagen daraus gelten möglicherweise nicht mehr.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/old_inputs.py" />
   <source>The stations with residuals and the tested stations (TESTED) were not made from the same heights: flags and w are left out of this report. Bring both up to date and write the report again.</source>
   <translation>Die Stationen mit Abweichungen und die getesteten Stationen (TESTED) stammen nicht aus denselben Höhen: Markierungen und w bleiben in diesem Bericht weg. Beide auf Stand bringen und den Bericht neu schreiben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Name of the project, for the title block.</source>
   <translation>Name des Projekts, für den Titelblock.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Name of the structure, for the title block. Empty: the names of its axes.</source>
   <translation>Name des Bauwerks, für den Titelblock. Leer: die Namen seiner Achsen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>As it is to be printed. Empty: today, year-month-day.</source>
   <translation>Wie es gedruckt werden soll. Leer: heute, Jahr-Monat-Tag.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Person responsible for the report; a line for the signature is left.</source>
   <translation>Verantwortliche Person für den Bericht; eine Zeile für die Unterschrift bleibt frei.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Person who has checked it; a line for the signature is left beside it.</source>
   <translation>Person, die geprüft hat; daneben bleibt eine Zeile für die Unterschrift frei.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Imagery</source>
   <translation>Luftbild</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Raster that the map lies on. Empty: a map without background.</source>
   <translation>Raster, auf dem die Karte liegt. Leer: Karte ohne Hintergrund.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Line of the structure, drawn on the map.</source>
   <translation>Linie des Bauwerks, auf der Karte gezeichnet.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Decisions</source>
   <translation>Entscheidungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Table with the fields axis, station, decision, note, by, at, as the review dock keeps it.</source>
   <translation>Tabelle mit den Feldern axis, station, decision, note, by, at, wie das Prüffenster sie führt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Output of 'Fit a straight line or plane': its test values w and flags, of heights and line.</source>
   <translation>Ausgabe von 'Gerade oder Ebene einpassen': deren Testgrößen w und Markierungen, von Höhen und Linie.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>References of 'Fit a straight line or plane': straightness and tangent point.</source>
   <translation>Bezüge aus 'Gerade oder Ebene einpassen': Geradheit und Berührpunkt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Table of 'Test which shape was built'.</source>
   <translation>Tabelle aus 'Gebaute Form testen'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Summary of 'Design heights and residuals'. Only needed where the stations do not carry the record of their run.</source>
   <translation>Zusammenfassung aus 'Soll-Höhen und Abweichungen'. Nur nötig, wenn die Stationen kein Laufprotokoll tragen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>One value for all stations, in the unit of heights; the certainty of the verdict rests on it. With 0.003 in metres a residual of 8 mm is within 10 mm with a probability of 75 %. Empty: the stations' field 'sd', else that of the run that tested them, else no certainty is given.</source>
   <translation>Ein Wert für alle Stationen, in der Höheneinheit; auf ihm beruht die Sicherheit des Urteils. Mit 0.003 in Metern liegt eine Abweichung von 8 mm mit einer Wahrscheinlichkeit von 75 % innerhalb von 10 mm. Leer: das Feld 'sd' der Stationen, sonst der Wert des Laufs, der sie getestet hat, sonst ohne Angabe der Sicherheit.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>For stations judged in line: one value for all, in the unit of heights; the certainty of the line's verdict rests on it. With 0.003 in metres a departure of 8 mm is within 10 mm with a probability of 75 %. Empty: that of the run that tested the stations, else no certainty is given.</source>
   <translation>Für Stationen, deren Linie beurteilt ist: ein Wert für alle, in der Höheneinheit; auf ihm beruht die Sicherheit des Urteils über die Linie. Mit 0.003 in Metern liegt eine Querabweichung von 8 mm mit einer Wahrscheinlichkeit von 75 % innerhalb von 10 mm. Leer: der Wert des Laufs, der die Stationen getestet hat, sonst ohne Angabe der Sicherheit.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Radial tolerance</source>
   <translation>Radiale Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>For stations judged in line: greatest departure in height and line together, √(v² + l²), that counts as within, in the unit of heights: 8 mm high and 6 mm to the right are 10 mm together. Empty: they are judged one by one.</source>
   <translation>Für Stationen, deren Linie beurteilt ist: größte Abweichung in Höhe und Linie zusammen, √(v² + l²), die noch als innerhalb zählt, in der Höheneinheit: 8 mm zu hoch und 6 mm nach rechts sind zusammen 10 mm. Leer: Höhe und Linie werden einzeln beurteilt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Report for the screen</source>
   <translation>Bericht für den Bildschirm</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>One HTML file that opens offline and prints well.</source>
   <translation>Eine HTML-Datei, die ohne Internet öffnet und sich gut drucken lässt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Report for paper</source>
   <translation>Bericht für Papier</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>A PDF of A4 pages.</source>
   <translation>Ein PDF aus A4-Seiten.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>PDF files (*.pdf)</source>
   <translation>PDF-Dateien (*.pdf)</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Axis on the slide</source>
   <translation>Achse auf der Folie</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>Whose profile the slide shows. Empty: the axis of the greatest residual.</source>
   <translation>Deren Längsschnitt die Folie zeigt. Leer: die Achse mit der größten Abweichung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>One slide</source>
   <translation>Eine Vortragsfolie</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>One picture, 16:9, for a talk or a page: map, profile with the straight line, the level surface and the line with no curvature, the verdict in a sentence, caution. The ending says which: a PNG of 3840 by 2160 pixels, or a PDF.</source>
   <translation>Ein Bild, 16:9, für einen Vortrag oder eine Seite: Karte, Längsschnitt mit der Geraden, der Niveaufläche und der Linie ohne Erdkrümmung, das Ergebnis in einem Satz, Warnhinweis. Die Endung bestimmt die Art: ein PNG mit 3840 mal 2160 Pixeln oder ein PDF.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/parameters.py" />
   <source>PNG pictures (*.png);;PDF files (*.pdf)</source>
   <translation>PNG-Bilder (*.png);;PDF-Dateien (*.pdf)</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/profile_chart.py" />
   <source>the axis</source>
   <translation>die Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/profile_chart.py" />
   <source>Profile of {} from {} to {} in two views. Above, heights above the level surface: design and as-built heights over the station.</source>
   <translation>Längsschnitt von {} von {} bis {} in zwei Ansichten. Oben Höhen über der Niveaufläche: Soll- und Ist-Höhen über der Station.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/profile_chart.py" />
   <source>Below, heights from the design: the lowest {} at {}, the highest {} at {}.</source>
   <translation>Unten Höhen vom Soll aus: die tiefste {} bei {}, die höchste {} bei {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/profile_chart.py" />
   <source>Below, heights from the design: no as-built height is known.</source>
   <translation>Unten Höhen vom Soll aus: Keine Ist-Höhe ist bekannt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/profile_chart.py" />
   <source>{} are within the tolerance, {} too high, {} too low.</source>
   <translation>Innerhalb der Toleranz: {}, zu hoch: {}, zu tief: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/profile_chart.py" />
   <source>At the bottom, the lateral departures from the line: at most {}, at {}.</source>
   <translation>Ganz unten die Querabweichungen von der Linie: höchstens {}, bei {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/profile_chart.py" />
   <source>Above: heights above the level surface through the first station.</source>
   <translation>Oben: Höhen über der Niveaufläche durch die erste Station.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/profile_chart.py" />
   <source>The dashed line is the design with no curvature.</source>
   <translation>Die gestrichelte Linie ist der Entwurf ohne Erdkrümmung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/profile_chart.py" />
   <source>Below: the same heights seen from the design.</source>
   <translation>Unten: dieselben Höhen, vom Soll aus gesehen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/profile_chart.py" />
   <source>The band is the tolerance.</source>
   <translation>Das Band ist die Toleranz.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/profile_chart.py" />
   <source>The dash-dotted line is the level surface, as far as it lies in the picture.</source>
   <translation>Die strichpunktierte Linie ist die Niveaufläche, soweit sie im Bild liegt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/profile_chart.py" />
   <source>Crosses are doubted heights.</source>
   <translation>Kreuze sind angezweifelte Höhen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/profile_chart.py" />
   <source>The report's profiles need matplotlib in QGIS's own Python (python3-matplotlib on Debian and Ubuntu).</source>
   <translation>Die Längsschnitte des Berichts brauchen matplotlib im Python von QGIS (python3-matplotlib unter Debian und Ubuntu).</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/profile_chart.py" />
   <source>level surface</source>
   <translation>Niveaufläche</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/profile_chart.py" />
   <source>above level ({})</source>
   <translation>über Niveau ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/profile_chart.py" />
   <source>from design ({})</source>
   <translation>gegen Soll ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/report_run.py" />
   <source>Neither HTML nor PDF nor SLIDE is given; say where a report is to be written.</source>
   <translation>Weder HTML noch PDF noch SLIDE ist angegeben; angeben, wohin ein Bericht geschrieben werden soll.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/report_run.py" />
   <source>Review report: {}</source>
   <translation>Prüfbericht: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/report_run.py" />
   <source>Map of the stations along {}, by their status: {} within the tolerance, {} high, {} low.</source>
   <translation>Karte der Stationen nach ihrem Status, {}: {} innerhalb der Toleranz, {} zu hoch, {} zu tief.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/report_run.py" />
   <source>Map of {} stations along {}, built high or low; no tolerance was stated.</source>
   <translation>Karte von {} Stationen entlang {}, zu hoch oder zu tief gebaut; eine Toleranz wurde nicht angegeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/report_run.py" />
   <source>{} without an as-built height.</source>
   <translation>Ohne Ist-Höhe: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/report_run.py" />
   <source>Stations by their status; size by the residual. North is up, as the arrow shows. </source>
   <translation>Stationen nach ihrem Status; Größe nach der Abweichung. Norden ist oben, wie der Pfeil zeigt. </translation>
  </message>
  <message>
   <location filename="../../algorithms/report/report_run.py" />
   <source>Background: {}.</source>
   <translation>Hintergrund: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/report_run.py" />
   <source>No imagery was supplied.</source>
   <translation>Es wurde kein Luftbild angegeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/report_run.py" />
   <source>SLIDE is a PNG picture or a PDF page; its file must end in .png or .pdf, not in '{}'.</source>
   <translation>SLIDE ist ein PNG-Bild oder eine PDF-Seite; die Datei muss auf .png oder .pdf enden, nicht auf '{}'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/report_run.py" />
   <source>Understood: {} of layer '{}' on {}; heights in {}, {}.</source>
   <translation>Verstanden: {} aus Layer '{}' auf {}; Höhen in {}, {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/report_run.py" />
   <source>with the record of their run</source>
   <translation>mit Laufprotokoll</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/report_run.py" />
   <source>without a record of their run, so that design and height system are not told</source>
   <translation>ohne Laufprotokoll, sodass Entwurf und Höhensystem nicht bekannt sind</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>the tolerance of its run (not recorded)</source>
   <translation>der Toleranz des Laufs (nicht aufgezeichnet)</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>the tolerance of ±{}</source>
   <translation>der Toleranz von ±{}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>the tolerances of its axes, ±{} to ±{}</source>
   <translation>der Toleranzen der Achsen (±{} bis ±{})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source> of {}</source>
   <translation> auf {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source> and {} more</source>
   <translation> und {} weitere</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>Nothing can be said about {}: no station has an as-built height.</source>
   <translation>{}: Es lässt sich nichts aussagen, keine Station hat eine Ist-Höhe.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>No tolerance was stated for {}, so there is no verdict: the residuals of {} are given as they are, RMS {}, greatest {} at {}.</source>
   <translation>{}: Es ist keine Toleranz angegeben, deshalb gibt es kein Urteil; die Abweichungen von {} stehen da, wie sie sind, RMS {}, größte {} bei {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>{} of {} with a height are within it</source>
   <translation>{} von {} mit Höhe liegen darin</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>{} was not built to its design within {}: {}.</source>
   <translation>{} wurde nicht innerhalb {} nach Entwurf gebaut: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>{} does not appear to be built to its design within {}, but the heights are not accurate enough to be certain: {}.</source>
   <translation>{} wurde offenbar nicht innerhalb {} nach Entwurf gebaut, aber die Höhen sind für eine sichere Aussage nicht genau genug: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>Whether {} was built to its design within {} cannot be said yet: {}, and every height beyond it is doubted.</source>
   <translation>Ob {} innerhalb {} nach Entwurf gebaut wurde, lässt sich noch nicht sagen: {}, und jede Höhe außerhalb ist angezweifelt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>{} was not built to its design within {} everywhere, but every departure has been accepted: {}.</source>
   <translation>{} wurde nicht überall innerhalb {} nach Entwurf gebaut, aber jede Überschreitung wurde so belassen: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>{} is within {} as measured, but some stations lie too near the limit to be certain: {}.</source>
   <translation>{} liegt nach der Messung innerhalb {}, aber einige Stationen liegen für eine sichere Aussage zu nahe an der Grenze: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>{} was built to its design within {}: {}.</source>
   <translation>{} wurde innerhalb {} nach Entwurf gebaut: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>Beyond the tolerance: {}.</source>
   <translation>Außerhalb der Toleranz: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>Beyond it too, but doubted (suspected blunders, or by decision) and not counted against the structure: {}.</source>
   <translation>Ebenfalls außerhalb, aber angezweifelt (vermutete grobe Fehler oder durch Entscheidung) und nicht zulasten des Bauwerks gezählt: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>Beyond the tolerance, but doubted (suspected blunders, or by decision) and not counted against the structure: {}.</source>
   <translation>Außerhalb der Toleranz, aber angezweifelt (vermutete grobe Fehler oder durch Entscheidung) und nicht zulasten des Bauwerks gezählt: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>Beyond the tolerance and accepted by decision: {}.</source>
   <translation>Außerhalb der Toleranz und durch Entscheidung so belassen: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>{} to {} lie high together, {} by up to {}</source>
   <translation>{} bis {} liegen gemeinsam zu hoch, {} um bis zu {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>{} to {} lie low together, {} by up to {}</source>
   <translation>{} bis {} liegen gemeinsam zu tief, {} um bis zu {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>neighbours that depart to one side are a movement of the structure rather than errors of reading</source>
   <translation>Nachbarn, die nach einer Seite abweichen, sprechen eher für eine Bewegung des Bauwerks als für Ablesefehler</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>{} stretches have moved: {}; {}.</source>
   <translation>{} Strecken haben sich bewegt: {}; {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>No as-built height, so that nothing is known of them: {}.</source>
   <translation>Ohne Ist-Höhe, sodass nichts über sie bekannt ist: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>Off axis and not reviewed: {}.</source>
   <translation>Abseits der Achse und nicht geprüft: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>Certainty: there is none to state without a tolerance.</source>
   <translation>Sicherheit: Ohne Toleranz ist keine anzugeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>Certainty: not known, since no accuracy of the heights was stated; the numbers are taken as they stand.</source>
   <translation>Sicherheit: nicht bekannt, da keine Genauigkeit der Höhen angegeben ist; die Zahlen gelten, wie sie dastehen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>Certainty: not known, since the tolerance is not recorded with the stations; the statuses are taken as they stand.</source>
   <translation>Sicherheit: nicht bekannt, da die Toleranz bei den Stationen nicht aufgezeichnet ist; die Status gelten, wie sie dastehen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>Certainty: a height has a standard deviation of {} ({}). </source>
   <translation>Sicherheit: Eine Höhe hat die Standardabweichung {} ({}). </translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source> The errors of the stations that the design goes through are counted.</source>
   <translation> Die Fehler der Stationen, durch die der Entwurf läuft, sind berücksichtigt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source> The design comes from these heights; its own errors are not counted.</source>
   <translation> Der Entwurf folgt aus diesen Höhen; seine eigenen Fehler sind nicht berücksichtigt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source> The design is taken as exact.</source>
   <translation> Der Entwurf gilt als fehlerfrei.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>Each taken alone, {} are within with at least 95 % probability and {} beyond</source>
   <translation>Einzeln betrachtet mit mindestens 95 % Wahrscheinlichkeit innerhalb: {}; außerhalb: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>; {} too near the limit to tell.</source>
   <translation>; {} für eine Aussage zu nahe an der Grenze.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>lies</source>
   <translation>liegt</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>lie</source>
   <translation>liegen</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>The geoid's slope and bending were not known to this run. A slope of 5 seconds of arc, which is common, changes the heights of a straight line by 73 mm in 3 km; where the controls do not take it up, it is in the residuals.</source>
   <translation>Geoidneigung und Geoidkrümmung waren diesem Lauf nicht bekannt. Eine Neigung von 5 Bogensekunden, wie sie häufig vorkommt, ändert die Höhen einer Geraden um 73 mm auf 3 km; wo die Zwangspunkte sie nicht aufnehmen, steckt sie in den Abweichungen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>Accuracy at 95 %: not given, since every height is doubted.</source>
   <translation>Genauigkeit bei 95 %: nicht angegeben, da jede Höhe angezweifelt ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>only {} are left, and {} are needed</source>
   <translation>übrig sind nur {}, nötig sind {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>the mean is not zero: it lies {} of its standard errors from it, and {} are allowed</source>
   <translation>das Mittel ist nicht null: Es liegt {} seiner Standardfehler davon entfernt, erlaubt sind {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>the residuals are not normally distributed (Anderson and Darling's test at 5 %)</source>
   <translation>die Abweichungen sind nicht normalverteilt (Test von Anderson und Darling bei 5 %)</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>the design was taken from the heights themselves, so they do not check it independently</source>
   <translation>der Entwurf stammt aus den Höhen selbst, sie kontrollieren ihn also nicht unabhängig</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source> {} with a doubted height left out.</source>
   <translation> Ohne {} mit angezweifelter Höhe.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>(1.96 times the RMS; FGDC-STD-007.3-1998: at least 20 points, no blunders, no bias, normal errors, independent of the design)</source>
   <translation>(1,96 mal RMS; FGDC-STD-007.3-1998: mindestens 20 Punkte, keine groben und keine systematischen Fehler, normalverteilte Abweichungen, unabhängig vom Entwurf)</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>Accuracy at 95 %: {} {}. Its conditions hold.</source>
   <translation>Genauigkeit bei 95 %: {} {}. Die Bedingungen sind erfüllt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>Accuracy at 95 %: not given {}, since {}.</source>
   <translation>Genauigkeit bei 95 %: nicht angegeben {}, denn {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>as-built height</source>
   <translation>Ist-Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>the surveyed height, in the height system and unit of the input</source>
   <translation>die gemessene Höhe, im Höhensystem und in der Einheit der Eingabe</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>design height</source>
   <translation>Soll-Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>the height the station should have under the stated design, in the same system and unit</source>
   <translation>die Höhe, die die Station nach dem angegebenen Entwurf haben sollte, im selben System und in derselben Einheit</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>as-built minus design; + is built high, − is built low</source>
   <translation>Ist minus Soll; + ist zu hoch, − ist zu tief gebaut</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>adjustment</source>
   <translation>Korrektur</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>the residual with the other sign; + is raise, − is lower</source>
   <translation>die Abweichung mit umgekehrtem Vorzeichen; + ist heben, − ist senken</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>curvature effect</source>
   <translation>Krümmungseinfluss</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>design height minus the design height with no curvature; a chord lies below the level surface between its ends (−), a tangent rises above it on both sides of its tangent point (+)</source>
   <translation>Soll-Höhe minus Soll-Höhe ohne Erdkrümmung; eine Sehne liegt zwischen ihren Enden unter der Niveaufläche (−), eine Tangente steigt beiderseits ihres Berührpunkts über sie (+)</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>distance along the axis from its origin, at the chainage height; also its notation, 12+50 or 1+250</source>
   <translation>Entfernung längs der Achse von ihrem Anfang, in der Stationierungshöhe; auch ihre Angabe, 12+50 oder 1+250</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>distance from the axis, + to the right looking up-chainage</source>
   <translation>Abstand von der Achse, + in Stationierungsrichtung nach rechts</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>residual of the fit over its standard deviation; beyond 3.29 a blunder is suspected (probability of a false alarm 0.1 %)</source>
   <translation>Verbesserung im Ausgleich durch ihre Standardabweichung; über 3,29 wird ein grober Fehler vermutet (Wahrscheinlichkeit eines Fehlalarms 0,1 %)</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>probability within tolerance</source>
   <translation>Wahrscheinlichkeit innerhalb der Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>probability that the true height is within the tolerance, from the residual and its standard deviation (JCGM 106:2012)</source>
   <translation>Wahrscheinlichkeit, dass die wahre Höhe innerhalb der Toleranz liegt, aus der Abweichung und ihrer Standardabweichung (JCGM 106:2012)</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>greatest residual, up or down, that counts as within</source>
   <translation>größte Abweichung, nach oben oder unten, die noch als innerhalb zählt</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>square root of the mean of the squared residuals</source>
   <translation>Wurzel aus dem Mittel der quadrierten Abweichungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>height of the geoid above the ellipsoid, h = H + N</source>
   <translation>Höhe des Geoids über dem Ellipsoid, h = H + N</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>curvature factor</source>
   <translation>Krümmungsfaktor</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>1 for straight in space, 0 for a constant slope above the level surface</source>
   <translation>1 für gerade im Raum, 0 für eine konstante Neigung über der Niveaufläche</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>For review, not for setting out: nothing is raised, lowered or rebuilt from this report without a licensed surveyor or engineer, and field work follows local codes, which prevail over it.</source>
   <translation>Zur Prüfung, nicht zur Absteckung: Nach diesem Bericht wird ohne zugelassene Fachperson für Vermessung oder Ingenieurwesen nichts gehoben, gesenkt oder umgebaut; für Arbeiten vor Ort gelten die örtlichen Vorschriften; sie haben Vorrang.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/sentences.py" />
   <source>The residuals hold for the design, the controls, the height system and the units named here, and for no others; check these first. A station is judged by the height supplied, on the day it was surveyed.</source>
   <translation>Die Abweichungen gelten für den Entwurf, die Zwangspunkte, das Höhensystem und die Einheiten, die hier genannt sind, und für keine anderen; diese zuerst prüfen. Eine Station wird nach der gelieferten Höhe beurteilt, am Tag ihrer Messung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/slide.py" />
   <source>The slide needs matplotlib in QGIS's own Python (python3-matplotlib on Debian and Ubuntu).</source>
   <translation>Die Folie braucht matplotlib im Python von QGIS (python3-matplotlib unter Debian und Ubuntu).</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/slide.py" />
   <source>Review of {}: one slide</source>
   <translation>Prüfung von {}: eine Folie</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/slide.py" />
   <source>Axis '{}' has no two stations with a design height, so there is no profile to show.</source>
   <translation>Achse '{}' hat keine zwei Stationen mit Soll-Höhe, deshalb gibt es keinen Längsschnitt zu zeigen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/slide.py" />
   <source>There is no axis '{}' among the stations; there are {}.</source>
   <translation>Unter den Stationen gibt es keine Achse '{}'; vorhanden sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/slide.py" />
   <source>Profile of {}, heights exaggerated {}.</source>
   <translation>Längsschnitt {}, Höhen überhöht {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/slide.py" />
   <source>Profile, heights exaggerated {}.</source>
   <translation>Längsschnitt, Höhen überhöht {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/slide.py" />
   <source>Straight in space is a curve above the level surface; a drawing that ignores curvature leaves it out.</source>
   <translation>Was im Raum gerade ist, ist über der Niveaufläche eine Kurve; eine Zeichnung, die die Erdkrümmung vernachlässigt, lässt sie weg.</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/slide.py" />
   <source>Height above the level surface ({})</source>
   <translation>Höhe über der Niveaufläche ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/slide.py" />
   <source>As-built minus design ({})</source>
   <translation>Ist minus Soll ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/slide.py" />
   <source>straight design</source>
   <translation>gerades Soll</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/slide.py" />
   <source>no as-built height</source>
   <translation>keine Ist-Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/slide.py" />
   <source>too high</source>
   <translation>zu hoch</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/slide.py" />
   <source>too low</source>
   <translation>zu tief</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/statistics_table.py" />
   <source>all</source>
   <translation>alle</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/statistics_table.py" />
   <source>Mean ({})</source>
   <translation>Mittel ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/report/statistics_table.py" />
   <source>St. dev. ({})</source>
   <translation>Std.-Abw. ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/review_report.py" />
   <source>HTML</source>
   <translation>HTML</translation>
  </message>
  <message>
   <location filename="../../algorithms/review_report.py" />
   <source>PDF</source>
   <translation>PDF</translation>
  </message>
  <message>
   <location filename="../../algorithms/review_report.py" />
   <source>Write the review report</source>
   <translation>Prüfbericht schreiben</translation>
  </message>
  <message>
   <location filename="../../algorithms/review_report.py" />
   <source>Writes what was found about a structure as one HTML file that opens offline and as a PDF of A4 pages: a verdict in plain words with its certainty, the map, the profile in both views, statistics, stations needing attention and all stations, what was computed with which versions, the commands that reproduce the results, terms with their signs, and cautions.

Stations with residuals are enough. Tested stations, references, the table of curvature and decisions add what they know; where one is missing the report says so. SLIDE puts map, profile and verdict into one picture for a talk.

The verdict counts a station against the structure where it is out of tolerance and its height is not doubted. Suspected blunders, readings decided to be errors and stations to be measured again are named but not counted, unless at least three neighbours depart together. With standard deviations of the heights it says of how many stations it is certain: with 3 mm a residual of 8 mm is within 10 mm with a probability of 75 %.

Stations that were judged in line too (LINE of 'Design heights and residuals') get a second verdict, chart and columns on it, and a third verdict on both together where RADIAL_TOLERANCE states a limit.

The report is for review. Field work follows local codes, and a licensed surveyor or engineer decides.</source>
   <translation>Schreibt, was über ein Bauwerk gefunden wurde, als eine HTML-Datei, die ohne Internet öffnet, und als PDF aus A4-Seiten: ein Urteil in klaren Worten mit seiner Sicherheit, die Karte, den Längsschnitt in beiden Ansichten, Statistik, zu prüfende Stationen und alle Stationen, was mit welchen Versionen berechnet wurde, die Befehle, die die Ergebnisse reproduzieren, Begriffe mit ihren Vorzeichen und Warnhinweise.

Stationen mit Abweichungen genügen. Getestete Stationen, Bezüge, die Krümmungstabelle und Entscheidungen tragen bei, was sie wissen; was fehlt, nennt der Bericht. SLIDE bringt Karte, Längsschnitt und Ergebnis für einen Vortrag in ein Bild.

Das Urteil zählt eine Station zulasten des Bauwerks, wenn sie außerhalb der Toleranz liegt und ihre Höhe nicht angezweifelt ist. Vermutete grobe Fehler, als Fehler entschiedene Ablesungen und nachzumessende Stationen werden genannt, aber nicht gezählt, außer wenn mindestens drei Nachbarn gemeinsam abweichen. Mit Standardabweichungen der Höhen gibt es an, für wie viele Stationen es sicher ist: Mit 3 mm liegt eine Abweichung von 8 mm mit einer Wahrscheinlichkeit von 75 % innerhalb von 10 mm.

Stationen, deren Linie mit beurteilt ist (LINE aus 'Soll-Höhen und Abweichungen'), erhalten dazu ein zweites Urteil, ein Diagramm und Spalten, und ein drittes Urteil über beides zusammen, wenn RADIAL_TOLERANCE eine Grenze angibt.

Der Bericht dient der Prüfung. Für Arbeiten vor Ort gelten die örtlichen Vorschriften, und es entscheidet eine zugelassene Fachperson für Vermessung oder Ingenieurwesen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/review_report.py" />
   <source>print</source>
   <translation>drucken</translation>
  </message>
  <message>
   <location filename="../../algorithms/review_report.py" />
   <source>report</source>
   <translation>Bericht</translation>
  </message>
  <message>
   <location filename="../../algorithms/review_report.py" />
   <source>statistics</source>
   <translation>Statistik</translation>
  </message>
  <message>
   <location filename="../../algorithms/review_report.py" />
   <source>verdict</source>
   <translation>Urteil</translation>
  </message>
  <message>
   <location filename="../../algorithms/review_report.py" />
   <source>Stations within the radial tolerance</source>
   <translation>Stationen innerhalb der radialen Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/review_report.py" />
   <source>Greatest departure in height and line together</source>
   <translation>Größte Abweichung in Höhe und Linie zusammen</translation>
  </message>
  <message>
   <location filename="../../algorithms/review_report.py" />
   <source>IMAGERY cannot be read as a raster: {}.</source>
   <translation>IMAGERY lässt sich nicht als Raster lesen: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>beyond the lateral travel</source>
   <translation>jenseits des seitlichen Stellwegs</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>beyond the jack's travel</source>
   <translation>jenseits des Stellwegs</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>no multiple of the increment falls within the tolerance</source>
   <translation>kein Vielfaches der Stufe fällt in die Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>held by its neighbours</source>
   <translation>durch die Nachbarn gehalten</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>stays out of tolerance</source>
   <translation>bleibt außerhalb der Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>for its neighbours</source>
   <translation>wegen der Nachbarn</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>Line: {}</source>
   <translation>Linie: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>{} out of tolerance after the adjustment, by the amount given: {}.</source>
   <translation>{} nach der Korrektur außerhalb der Toleranz, um den angegebenen Betrag: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>support stays</source>
   <translation>Auflager bleibt</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>supports stay</source>
   <translation>Auflager bleiben</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>{} and {} ({})</source>
   <translation>{} und {} ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>{} of neighbours differ by more than {}: {}.</source>
   <translation>{} von Nachbarn mit mehr als {} Unterschied: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>Line: the stations were not tested for lateral blunders: a blunder becomes a movement. The greatest is {} at {}.</source>
   <translation>Linie: Die Stationen wurden nicht auf seitliche grobe Fehler getestet: Ein grober Fehler wird zur Bewegung. Die größte ist {} bei {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>The stations were not tested for blunders: a blunder becomes a movement. The greatest is {} at {}. Give TESTED, stations of 'Fit a straight line or plane', or DECISIONS.</source>
   <translation>Die Stationen wurden nicht auf grobe Fehler getestet: Ein grober Fehler wird zur Bewegung. Die größte ist {} bei {}. TESTED angeben, Stationen aus 'Gerade oder Ebene einpassen', oder DECISIONS.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>More than one movement at one position: {}; decide on one.</source>
   <translation>Mehr als eine Bewegung an derselben Stelle: {}; eine davon wählen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source> and </source>
   <translation> und </translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>raise at most {}</source>
   <translation>heben um höchstens {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>lower at most {}</source>
   <translation>senken um höchstens {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>neighbours' predicted residuals differ by at most {}</source>
   <translation>vorausgesagte Abweichungen von Nachbarn unterscheiden sich um höchstens {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>to the right at most {}</source>
   <translation>nach rechts um höchstens {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>to the left at most {}</source>
   <translation>nach links um höchstens {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>neighbours' predicted lateral departures differ by at most {}</source>
   <translation>vorausgesagte Querabweichungen von Nachbarn unterscheiden sich um höchstens {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>least sum of movements that brings all within tolerance</source>
   <translation>kleinste Summe der Bewegungen, die alle in die Toleranz bringt</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>full correction</source>
   <translation>volle Korrektur</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>whole increments of {}</source>
   <translation>ganze Stufen von {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>no increment</source>
   <translation>ohne Stufen</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>no limit of travel</source>
   <translation>Stellweg ohne Grenze</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>tolerance {}</source>
   <translation>Toleranz {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source> to </source>
   <translation> bis </translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>Raise {}, lower {}, keep {}; sum of movements {}, greatest {}.</source>
   <translation>Heben {}, senken {}, belassen {}; Summe der Bewegungen {}, größte {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>Move right {}, left {}, keep {}; sum of movements {}, greatest {}.</source>
   <translation>Nach rechts {}, nach links {}, belassen {}; Summe der Bewegungen {}, größte {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>No support can be scheduled.</source>
   <translation>Für kein Auflager lässt sich eine Korrektur planen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>Predicted: {} within tolerance, {} outside.</source>
   <translation>Vorausgesagt: {} innerhalb der Toleranz, {} außerhalb.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>To be measured again</source>
   <translation>Nachzumessen</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>Left out</source>
   <translation>Ausgelassen</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>Off axis</source>
   <translation>Abseits der Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>No lateral departure</source>
   <translation>Keine Querabweichung</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>{}: {}.</source>
   <translation>{}: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/messages.py" />
   <source>Understood: {} of layer '{}'; {}.</source>
   <translation>Verstanden: {} aus Layer '{}'; {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>▲ Raise {}</source>
   <translation>▲ Heben {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>▼ Lower {}</source>
   <translation>▼ Senken {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>◀ Left {}</source>
   <translation>◀ Links {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>▶ Right {}</source>
   <translation>▶ Rechts {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>Keep</source>
   <translation>Belassen</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>Line, on the tinted ground: left and right looking up-chainage. 'Stands' is where a support is now, '◀ Left' and '▶ Right' where it is to be moved.</source>
   <translation>Linie, auf getöntem Grund: links und rechts in Stationierungsrichtung. 'Liegt' sagt, wo ein Auflager jetzt ist, '◀ Links' und '▶ Rechts', wohin es zu bewegen ist.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>Support</source>
   <translation>Auflager</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>HEIGHT: up and down</source>
   <translation>HÖHE: auf und ab</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>LINE: left and right, looking up-chainage</source>
   <translation>LINIE: links und rechts in Stationierungsrichtung</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>Afterwards</source>
   <translation>Danach</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>Raise or lower ({})</source>
   <translation>Heben oder senken ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>Stands ({})</source>
   <translation>Liegt ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>Move left or right ({})</source>
   <translation>Nach links oder rechts ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>Increments of {}</source>
   <translation>Stufen von {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>Predicted ({})</source>
   <translation>Vorhersage ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>Remark</source>
   <translation>Bemerkung</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>Readings, initials</source>
   <translation>Ablesungen, Kürzel</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>stays {}</source>
   <translation>bleibt {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/movement_cells.py" />
   <source>Height: {}</source>
   <translation>Höhe: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Method</source>
   <translation>Verfahren</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>What is aimed at. full: every support as near to its design height as increment and travel allow. least: the smallest sum of movements that brings every support within the tolerance; those within it stay.</source>
   <translation>Was angestrebt wird. full (vollständig): jedes Auflager so nahe an seine Soll-Höhe, wie Stufe und Stellweg es erlauben. least (möglichst wenig): die kleinste Summe der Bewegungen, die jedes Auflager in die Toleranz bringt; wer darin liegt, bleibt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Shim increment</source>
   <translation>Blechstufe</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Movements are whole multiples of it, in the unit of heights: with 0.001 in metres a residual of -20.6 mm is raised by 21 mm. Empty: any movement.</source>
   <translation>Bewegungen sind ganze Vielfache davon, in der Höheneinheit: Mit 0.001 in Metern wird bei einer Abweichung von -20,6 mm um 21 mm gehoben. Leer: beliebige Bewegung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Greatest movement</source>
   <translation>Größte Bewegung</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Travel of the jack, up and down, in the unit of heights: 0.05 in metres is 50 mm each way. Empty: no limit.</source>
   <translation>Stellweg der Hubeinrichtung, nach oben und unten, in der Höheneinheit: 0.05 in Metern sind 50 mm in jede Richtung. Leer: keine Grenze.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Greatest lowering</source>
   <translation>Größte Senkung</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Where it differs from the greatest raise, for example 0 where supports can only be shimmed up. Empty: as the greatest movement.</source>
   <translation>Wenn sie von der größten Hebung abweicht, zum Beispiel 0, wo Auflager nur unterfüttert werden können. Leer: wie die größte Bewegung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Greatest residual that counts as within, in the unit of heights: 0.01 in metres is 10 mm. Empty: that of the run that made the stations, for each axis.</source>
   <translation>Größte Abweichung, die noch als innerhalb zählt, in der Höheneinheit: 0.01 in Metern sind 10 mm. Leer: die des Laufs, der die Stationen erzeugt hat, für jede Achse.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Limit between neighbours</source>
   <translation>Grenze zwischen Nachbarn</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Greatest difference of the predicted residuals of supports that follow each other on an axis, in the unit of heights: the kink that stays in the finished structure. With 0.002 in metres +1 mm and -1 mm may be neighbours, +2 mm and -1 mm not. Supports that are left out are passed over. Empty: no limit.</source>
   <translation>Größter Unterschied der vorausgesagten Abweichungen von Auflagern, die auf einer Achse aufeinander folgen, in der Höheneinheit: der Knick, der im fertigen Bauwerk bleibt. Mit 0.002 in Metern dürfen +1 mm und -1 mm Nachbarn sein, +2 mm und -1 mm nicht. Ausgelassene Auflager werden übersprungen. Leer: keine Grenze.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Increment of the lateral movement</source>
   <translation>Stufe der seitlichen Bewegung</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Movements left and right are whole multiples of it, in the unit of heights: 0.0005 in metres is half a millimetre. Empty: any movement.</source>
   <translation>Bewegungen nach links und rechts sind ganze Vielfache davon, in der Höheneinheit: 0.0005 in Metern ist ein halber Millimeter. Leer: beliebige Bewegung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Greatest lateral movement</source>
   <translation>Größte seitliche Bewegung</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Travel to the right and to the left, in the unit of heights: 0.02 in metres is 20 mm each way. Empty: no limit.</source>
   <translation>Stellweg nach rechts und links, in der Höheneinheit: 0.02 in Metern sind 20 mm in jede Richtung. Leer: keine Grenze.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Greatest movement to the left</source>
   <translation>Größte Bewegung nach links</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Where it differs from that to the right, for example 0 where supports cannot go left. Empty: as the greatest lateral movement.</source>
   <translation>Wenn sie von der nach rechts abweicht, zum Beispiel 0, wo Auflager nicht nach links können. Leer: wie die größte seitliche Bewegung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Greatest lateral departure that counts as within, in the unit of heights: 0.01 in metres is 10 mm to each side. Empty: that of the run that made the stations, for each axis.</source>
   <translation>Größte Querabweichung, die noch als innerhalb zählt, in der Höheneinheit: 0.01 in Metern sind 10 mm nach jeder Seite. Leer: die des Laufs, der die Stationen erzeugt hat, für jede Achse.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Lateral limit between neighbours</source>
   <translation>Seitliche Grenze zwischen Nachbarn</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Greatest difference of their predicted lateral departures, in the unit of heights: 0.002 in metres is 2 mm. Empty: no limit.</source>
   <translation>Größter Unterschied ihrer vorausgesagten Querabweichungen, in der Höheneinheit: 0.002 in Metern sind 2 mm. Leer: keine Grenze.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Whether there is lateral movement too. Empty or none: no. lateral: by the stations' field 'lateral', which 'Design heights and residuals' writes with LINE: a support that stands right is moved left, in increment and travel of its own, by the same method. Left and right are meant looking up-chainage.</source>
   <translation>Ob auch seitlich bewegt wird. Leer oder none (keine): nein. lateral (Querabweichung): nach dem Feld 'lateral' der Stationen, das 'Soll-Höhen und Abweichungen' mit LINE schreibt: Ein Auflager, das rechts liegt, wird nach links bewegt, mit eigener Stufe und eigenem Stellweg, nach demselben Verfahren. Links und rechts gelten in Stationierungsrichtung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Output of 'Fit a straight line or plane': stations suspected of a blunder are left out. Three and more suspected neighbours on one side are a stretch that has moved, and are scheduled; so are all of an axis where more than a tenth of its stations is suspected. Those suspected in line are left out of the lateral movement, by the same rules.</source>
   <translation>Ausgabe von 'Gerade oder Ebene einpassen': Stationen mit vermutetem grobem Fehler werden ausgelassen. Drei und mehr vermutete Nachbarn auf einer Seite sind eine bewegte Strecke und werden eingeplant; ebenso alle einer Achse, bei der mehr als ein Zehntel der Stationen vermutet ist. In der Linie vermutete werden bei der seitlichen Bewegung ausgelassen, nach denselben Regeln.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/parameters.py" />
   <source>Table with the fields axis, station, decision, note. Decisions: accept (stays as it is), move the support (included although flagged), measure again, reading error, blunder, leave out.</source>
   <translation>Tabelle mit den Feldern axis, station, decision, note. Entscheidungen: accept (bleibt, wie es ist), move the support (einbezogen, obwohl markiert), measure again, reading error, blunder, leave out.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/schedule_run.py" />
   <source>Increment, travel, tolerance or limit between neighbours of the line is given, but not used without LINE.</source>
   <translation>Stufe, Stellweg, Toleranz oder Grenze zwischen Nachbarn der Linie ist angegeben, wird aber ohne LINE nicht verwendet.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/schedule_run.py" />
   <source> ({})</source>
   <translation> ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/schedule_run.py" />
   <source>METHOD 'least' needs a {}; layer '{}' does not record the one it was made with{}.</source>
   <translation>METHOD 'least' braucht {}; im Layer '{}' ist der Wert seines Laufs nicht verzeichnet{}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/schedule_run.py" />
   <source>Layer '{}', row {}: {} needs the order along the axis, but there is no chainage.</source>
   <translation>Layer '{}', Zeile {}: {} braucht die Reihenfolge entlang der Achse, aber es gibt keine Stationierung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/schedule_run.py" />
   <source>Adjustment schedule</source>
   <translation>Korrekturplan</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>in {}</source>
   <translation>in {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Unit</source>
   <translation>Einheit</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>as stated for this sheet; the stations carry no record of their run</source>
   <translation>wie für dieses Blatt angegeben; die Stationen tragen kein Laufprotokoll</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Stations and chainages</source>
   <translation>Stationen und Stationierung</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Stations from</source>
   <translation>Stationen aus</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Instrument, benchmark</source>
   <translation>Instrument, Höhenfestpunkt</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Date of work</source>
   <translation>Datum der Arbeit</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Movement ({})</source>
   <translation>Bewegung ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>After</source>
   <translation>Danach</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Reading after ({}), initials</source>
   <translation>Ablesung danach ({}), Kürzel</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Asked for: {}.</source>
   <translation>Verlangt: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Check the controls, the height system and the unit before anything is moved. Move in small passes, and read neighbouring supports again after each: a structure that is continuous moves with them.</source>
   <translation>Zwangspunkte, Höhensystem und Einheit prüfen, bevor etwas bewegt wird. In kleinen Schritten bewegen und nach jedem die benachbarten Auflager neu ablesen: Ein durchlaufendes Bauwerk bewegt sich mit ihnen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Signs: residual is as-built minus design, + is built high. Movement is up for raise (▲), down for lower (▼). Predicted is the residual after the movement. Increments are counts of the shim increment.</source>
   <translation>Vorzeichen: Abweichung ist Ist minus Soll, + ist zu hoch gebaut. Bewegung ist nach oben heben (▲), nach unten senken (▼). Vorhersage ist die Abweichung nach der Bewegung. Stufen zählen die Blechstufen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Supports</source>
   <translation>Auflager</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>{}. Shaded: out of tolerance after the movement, or not to be moved.</source>
   <translation>{}. Hinterlegt: nach der Bewegung außerhalb der Toleranz oder nicht zu bewegen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>support</source>
   <translation>Auflager</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>supports</source>
   <translation>Auflager</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Adjustment schedule: {}</source>
   <translation>Korrekturplan: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Layer '{}' has no design heights (field 'design_h'), so there is no sheet of them.</source>
   <translation>Layer '{}' hat keine Soll-Höhen (Feld 'design_h'), deshalb gibt es kein Blatt davon.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Offset ({})</source>
   <translation>Querabstand ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Design height ({})</source>
   <translation>Soll-Höhe ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Reading ({})</source>
   <translation>Ablesung ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Difference ({})</source>
   <translation>Unterschied ({})</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>{}, {} without an as-built height.</source>
   <translation>{}, davon {} ohne Ist-Höhe.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>design heights</source>
   <translation>Soll-Höhen</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Design heights are computed at each station's own position. They hold in the height system and unit named here and for no other; a licensed surveyor checks them against the project's benchmarks before they are set out.</source>
   <translation>Soll-Höhen sind für die Lage jeder Station selbst berechnet. Sie gelten in dem Höhensystem und der Einheit, die hier genannt sind, und in keinen anderen; eine zugelassene Fachperson für Vermessung prüft sie an den Höhenfestpunkten des Projekts, bevor sie abgesteckt werden.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Offset is positive to the right looking up-chainage. An empty 'As built' has not been read yet.</source>
   <translation>Der Querabstand ist in Stationierungsrichtung nach rechts positiv. Ein leeres 'Ist' ist noch nicht abgelesen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/sheets.py" />
   <source>Design heights: {}</source>
   <translation>Soll-Höhen: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/supports.py" />
   <source>Layer '{}': no station has a residual; there is nothing to schedule.</source>
   <translation>Layer '{}': Keine Station hat eine Abweichung; es gibt nichts zu planen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/supports.py" />
   <source>Layer '{}' has no lateral departures (fields 'lateral' and 'side'); run 'Design heights and residuals' with LINE first and give its output.</source>
   <translation>Layer '{}' hat keine Querabweichungen (Felder 'lateral' und 'side'); zuerst 'Soll-Höhen und Abweichungen' mit LINE ausführen und dessen Ausgabe angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/supports.py" />
   <source>flag: {}</source>
   <translation>Markierung: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/supports.py" />
   <source>{}{} to {}: {} neighbours are flagged on one side; a stretch that has moved, not blunders; it is scheduled.</source>
   <translation>{}{} bis {}: {} Nachbarn sind auf einer Seite markiert; eine bewegte Strecke, keine groben Fehler; sie wird eingeplant.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/supports.py" />
   <source>{}{} of {} stations are flagged, more than a tenth: the structure has another shape than was fitted, and these are not blunders; they are scheduled.</source>
   <translation>{}{} von {} Stationen sind markiert, mehr als ein Zehntel: Das Bauwerk hat eine andere Form als die eingepasste, und dies sind keine groben Fehler; sie werden eingeplant.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/supports.py" />
   <source>Axis '{}': </source>
   <translation>Achse '{}': </translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/supports.py" />
   <source>flagged</source>
   <translation>markiert</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/unit_doubt.py" />
   <source>distances between the stations</source>
   <translation>den Abständen zwischen den Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/unit_doubt.py" />
   <source>bend of the straight design</source>
   <translation>der Krümmung des geraden Entwurfs</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule/unit_doubt.py" />
   <source>Layer '{}' has no record of its run, and by the {} it is in '{}', not in '{}' ({}); state HEIGHT_UNIT and CHAINAGE_UNIT, or give the layer that 'Design heights and residuals' made.</source>
   <translation>Layer '{}' hat kein Laufprotokoll und ist nach {} in '{}', nicht in '{}' ({}); HEIGHT_UNIT und CHAINAGE_UNIT angeben oder den Layer, den 'Soll-Höhen und Abweichungen' erzeugt hat.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>Says for each support by how much to raise or lower it, from the residuals of 'Design heights and residuals': in whole shims, within the travel of the jack. Movement is positive for raise: at a residual of -21.0 mm the support is raised by 21.0 mm.

'full' brings every support as near to its design height as increment and travel allow. 'least' finds the smallest sum of movements that brings every support within the tolerance; supports within it stay. A limit between neighbours keeps the difference of their predicted residuals small, which is the kink that remains in the finished structure; both methods then solve a linear programme over whole increments, so nothing is rounded afterwards. Increment and travel are always kept. Where tolerance and limit between neighbours cannot both be kept, the sum of what lies beyond them is made least, and those supports are named.

With LINE supports are moved left and right as well, by their lateral departures and in an increment and a travel of their own: one that stands right moves left, looking up-chainage. The sheet then has both.

Stations to be measured again and suspected blunders are left out; decisions go before flags. An accepted station stays as it is and still binds its neighbours.

Results are for review. Field work follows local codes, and a licensed surveyor or engineer decides.</source>
   <translation>Gibt für jedes Auflager an, um wie viel es zu heben oder zu senken ist, aus den Abweichungen von 'Soll-Höhen und Abweichungen': in ganzen Futterblechen, innerhalb des Stellwegs. Heben ist positiv: Bei einer Abweichung von -21,0 mm wird das Auflager um 21,0 mm gehoben.

'full' bringt jedes Auflager so nahe an seine Soll-Höhe, wie Stufe und Stellweg es erlauben. 'least' findet die kleinste Summe der Bewegungen, die jedes Auflager in die Toleranz bringt; Auflager darin bleiben. Eine Grenze zwischen Nachbarn hält den Unterschied ihrer vorausgesagten Abweichungen klein, also den Knick, der im fertigen Bauwerk bleibt; beide Verfahren lösen dann ein lineares Programm über ganze Stufen, sodass hinterher nichts gerundet wird. Stufe und Stellweg werden immer eingehalten. Wo Toleranz und Grenze zwischen Nachbarn nicht beide einzuhalten sind, wird die Summe der Überschreitungen möglichst klein gemacht, und diese Auflager werden genannt.

Mit LINE werden Auflager auch nach links und rechts bewegt, nach ihren Querabweichungen und mit eigener Stufe und eigenem Stellweg: Eines, das rechts liegt, bewegt sich nach links, in Stationierungsrichtung gesehen. Das Blatt enthält dann beides.

Nachzumessende Stationen und vermutete grobe Fehler werden ausgelassen; Entscheidungen gehen vor Markierungen. Eine so belassene Station bleibt, wie sie ist, und bindet weiterhin ihre Nachbarn.

Die Ergebnisse dienen der Prüfung. Für Arbeiten vor Ort gelten die örtlichen Vorschriften, und es entscheidet eine zugelassene Fachperson für Vermessung oder Ingenieurwesen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>Schedule adjustments</source>
   <translation>Korrekturplan aufstellen</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>alignment</source>
   <translation>Ausrichtung</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>jack</source>
   <translation>Hubeinrichtung</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>lowering</source>
   <translation>Senken</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>raising</source>
   <translation>Heben</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>schedule</source>
   <translation>Plan</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>setting out</source>
   <translation>Absteckung</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>shim</source>
   <translation>Futterblech</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>The stations with movement, action and the residual predicted after it: move 0.021 in metres is raise by 21 mm.</source>
   <translation>Die Stationen mit Bewegung, Maßnahme und der danach vorausgesagten Abweichung: move 0.021 in Metern heißt um 21 mm heben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>Schedule to print</source>
   <translation>Plan zum Drucken</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>A page with a row for each support, for the crew.</source>
   <translation>Eine Seite mit einer Zeile für jedes Auflager, für den Trupp.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>Schedule as CSV</source>
   <translation>Plan als CSV</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>For a spreadsheet; text that it would run as a formula is made text.</source>
   <translation>Für eine Tabellenkalkulation; Text, den sie als Formel ausführen würde, wird zu Text gemacht.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>CSV files (*.csv)</source>
   <translation>CSV-Dateien (*.csv)</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>Design heights to print</source>
   <translation>Soll-Höhen zum Drucken</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>A page with the design height of every station, those without an as-built height among them.</source>
   <translation>Eine Seite mit der Soll-Höhe jeder Station, auch derer ohne Ist-Höhe.</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>Supports to move</source>
   <translation>Zu bewegende Auflager</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>Sum of movements</source>
   <translation>Summe der Bewegungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>Supports that stay out of tolerance</source>
   <translation>Auflager, die außerhalb der Toleranz bleiben</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>Supports to move laterally</source>
   <translation>Seitlich zu bewegende Auflager</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>Sum of lateral movements</source>
   <translation>Summe der seitlichen Bewegungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/schedule_adjustments.py" />
   <source>Supports that stay out of the line's tolerance</source>
   <translation>Auflager, die außerhalb der Toleranz der Linie bleiben</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/axis_overrides.py" />
   <source>{}: '{}' is not known; known are {}.</source>
   <translation>{}: '{}' ist nicht bekannt; bekannt sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/axis_overrides.py" />
   <source>Axis '{}': {} {} of the axis layer is taken, not {} {}.</source>
   <translation>Achse '{}': Es gilt {} {} aus dem Achslayer, nicht {} {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/axis_overrides.py" />
   <source>ellipsoidal, as given</source>
   <translation>ellipsoidisch, wie angegeben</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/axis_overrides.py" />
   <source>ellipsoidal, chain_h of the axis layer</source>
   <translation>ellipsoidisch, chain_h des Achslayers</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/axis_overrides.py" />
   <source>on the ellipsoid, since no heights are known</source>
   <translation>auf dem Ellipsoid, da keine Höhen bekannt sind</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/axis_overrides.py" />
   <source>Chainage of the first vertex of axis '{}': {}</source>
   <translation>Stationierung am ersten Stützpunkt der Achse '{}': {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/axis_overrides.py" />
   <source>ellipsoidal, median of the heights</source>
   <translation>ellipsoidisch, Median der Höhen</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/axis_overrides.py" />
   <source>median of the heights, standing in for ellipsoidal ones</source>
   <translation>Median der Höhen, ersatzweise für ellipsoidische</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/axis_words.py" />
   <source>Layer '{}': the shift to the datum of the stations, {}, is good to {} m only, as PROJ states it; the axes may lie that much beside the stations.</source>
   <translation>Layer '{}': Der Übergang zum Datum der Stationen, {}, ist laut PROJ nur auf {} m genau; die Achsen können um so viel neben den Stationen liegen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/axis_words.py" />
   <source>Axis '{}': the line as drawn departs by up to {} m from the geodesics between its vertices, which are the axis here; where the drawn line is meant, give it more vertices.</source>
   <translation>Achse '{}': Die gezeichnete Linie weicht bis zu {} m von den geodätischen Linien zwischen ihren Stützpunkten ab, die hier die Achse sind; ist die gezeichnete Linie gemeint, ihr mehr Stützpunkte geben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/axis_words.py" />
   <source>{} more axes are drawn by more than 1 m beside the geodesics between their vertices.</source>
   <translation>{} weitere Achsen sind um mehr als 1 m neben den geodätischen Linien zwischen ihren Stützpunkten gezeichnet.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/axis_words.py" />
   <source>Layer '{}' has {} and no field 'design', without which none of these counts; it may be empty.</source>
   <translation>Der Layer „{}“ hat {} und kein Feld „design“, ohne das keines davon gilt; es darf leer sein.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/checks.py" />
   <source>Layer '{}' has stations at one position more than once, all kept: rows {}.</source>
   <translation>Layer '{}' hat Stationen mehrfach an derselben Stelle, alle behalten: Zeilen {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/checks.py" />
   <source>{} and {}</source>
   <translation>{} und {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/checks.py" />
   <source>Axis '{}': {} beyond its ends, by up to {} {}, on its continuation: {}.</source>
   <translation>Achse '{}': {} jenseits ihrer Enden, um bis zu {} {}, auf ihrer Verlängerung: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/conversion_run.py" />
   <source>CURVE needs an axis: give AXIS.</source>
   <translation>CURVE braucht eine Achse: AXIS angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/conversion_run.py" />
   <source>Understood: {} of layer '{}'; heights from {} in {}, taken as {}.</source>
   <translation>Verstanden: {} aus Layer '{}'; Höhen: {} in {}, gelesen als {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/conversion_run.py" />
   <source>Undulations {} to {} {} ({}).</source>
   <translation>Undulationen {} bis {} {} ({}).</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/conversion_run.py" />
   <source>{} converted; {} none.</source>
   <translation>{} umgerechnet; {} keine.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/conversion_run.py" />
   <source>point has</source>
   <translation>Punkt hat</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/conversion_run.py" />
   <source>points have</source>
   <translation>Punkte haben</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/conversion_run.py" />
   <source>HEIGHTS_ARE is '{}', but the record of layer '{}' says '{}'; they cannot both be right.</source>
   <translation>HEIGHTS_ARE ist '{}', das Laufprotokoll des Layers '{}' nennt aber '{}'; beides zugleich kann nicht stimmen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/generation_run.py" />
   <source>Axis '{}' from {} to {}: {}.</source>
   <translation>Achse '{}' von {} bis {}: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/generation_run.py" />
   <source>No station results: all listed chainages lie beyond the axes.</source>
   <translation>Es ergibt sich keine Station: Alle aufgeführten Stationen liegen außerhalb der Achsen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/generation_run.py" />
   <source>Nothing is asked for: give INTERVAL, CHAINAGES, or AT_VERTICES.</source>
   <translation>Nichts ist verlangt: INTERVAL, CHAINAGES oder AT_VERTICES angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/generation_run.py" />
   <source>Axis '{}': {} beyond its ends, by up to {} {}: left out.</source>
   <translation>Achse '{}': {} außerhalb ihrer Enden, um bis zu {} {}: ausgelassen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/generation_run.py" />
   <source>listed chainage lies</source>
   <translation>aufgeführte Station liegt</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/generation_run.py" />
   <source>listed chainages lie</source>
   <translation>aufgeführte Stationen liegen</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/generation_run.py" />
   <source>Axis '{}': the interval would make more than {} stations.</source>
   <translation>Achse '{}': Das Intervall ergäbe mehr als {} Stationen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_grid.py" />
   <source>PROJ has no grid '{}' (GEOID_NAME) in its folders ({}); install it there, or give a raster (GEOID).</source>
   <translation>PROJ hat kein Gitter '{}' (GEOID_NAME) in seinen Ordnern ({}); es dort installieren oder ein Raster angeben (GEOID).</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_grid.py" />
   <source>GEOID and GEOID_NAME are both given; the undulations can come from one of them only.</source>
   <translation>GEOID und GEOID_NAME sind beide angegeben; die Undulationen können nur aus einem davon kommen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_grid.py" />
   <source>{} is given, but the record of layer '{}' says that its undulations are from {}; they cannot both be right.</source>
   <translation>{} ist angegeben, aber nach dem Laufprotokoll des Layers '{}' stammen seine Undulationen aus: {}; beides zugleich kann nicht stimmen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_grid.py" />
   <source>the grid {} of PROJ</source>
   <translation>Gitter {} von PROJ</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_grid.py" />
   <source>GEOID is the raster '{}', but the record of layer '{}' says that its undulations are from the grid of PROJ; they cannot both be right.</source>
   <translation>GEOID ist das Raster '{}', aber nach dem Laufprotokoll des Layers '{}' stammen seine Undulationen aus dem Gitter von PROJ; beides zugleich kann nicht stimmen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_grid.py" />
   <source>The record of layer '{}' says that its undulations are from the raster '{}', which no longer exists; give it (GEOID).</source>
   <translation>Nach dem Laufprotokoll des Layers '{}' stammen seine Undulationen aus dem Raster '{}', das nicht mehr existiert; es angeben (GEOID).</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_grid.py" />
   <source>GEOID is the raster '{}', but the record of layer '{}' says '{}'; they cannot both be right.</source>
   <translation>GEOID ist das Raster '{}', aber das Laufprotokoll des Layers '{}' nennt '{}'; beides zugleich kann nicht stimmen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_grid.py" />
   <source>GEOID_BETWEEN is '{}', but the record of layer '{}' says '{}'; they cannot both be right.</source>
   <translation>GEOID_BETWEEN ist '{}', aber das Laufprotokoll des Layers '{}' nennt '{}'; beides zugleich kann nicht stimmen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_grid.py" />
   <source>the grid EGM96 of PROJ</source>
   <translation>Gitter EGM96 von PROJ</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_grid.py" />
   <source>the raster '{}'</source>
   <translation>Raster '{}'</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_grid.py" />
   <source>a raster does not state its accuracy; its publisher does</source>
   <translation>ein Raster nennt seine Genauigkeit nicht, das tut sein Herausgeber</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_grid.py" />
   <source>PROJ states no accuracy for the file {}</source>
   <translation>PROJ nennt für die Datei {} keine Genauigkeit</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_grid.py" />
   <source>file {}, accuracy of an undulation {} m as PROJ states it</source>
   <translation>Datei {}, Genauigkeit einer Undulation {} m laut PROJ</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_grid.py" />
   <source>The grid has no value at latitude {}°, longitude {}°, within twelve cells of latitude {}°, longitude {}°: the smooth surface there ends at the hole and is less sure (from {}).</source>
   <translation>Das Gitter hat keinen Wert bei Breite {}°, Länge {}°, weniger als zwölf Zellen von Breite {}°, Länge {}°: Die glatte Fläche endet dort an der Lücke und ist weniger sicher ({}).</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_grid.py" />
   <source>The grid is too coarse to show bending: its cells are {} km long, and no axis is longer than two of them.</source>
   <translation>Das Gitter ist zu grob, um eine Krümmung zu zeigen: Seine Zellen sind {} km lang, und keine Achse ist länger als zwei davon.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_profiles.py" />
   <source>One undulation for all hides the geoid's slope and bending along the axes; give a grid or a field to see them.</source>
   <translation>Eine Undulation für alle verdeckt Neigung und Krümmung des Geoids entlang der Achsen; ein Gitter oder ein Feld angeben, um sie zu sehen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_profiles.py" />
   <source>Axis '{}': over its {} the geoid {} by {} ({}″)</source>
   <translation>Achse '{}': Auf {} {} das Geoid um {} ({}″)</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_profiles.py" />
   <source>rises</source>
   <translation>steigt</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_profiles.py" />
   <source>falls</source>
   <translation>fällt</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_profiles.py" />
   <source>, by the difference over {} (two cells of the grid)</source>
   <translation>, aus dem Unterschied über {} (zwei Zellen des Gitters)</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_profiles.py" />
   <source>{}; {}.</source>
   <translation>{}; {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_profiles.py" />
   <source>the grid is too coarse to show bending</source>
   <translation>das Gitter ist zu grob, um eine Krümmung zu zeigen</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_profiles.py" />
   <source>two stations show no bending</source>
   <translation>zwei Stationen zeigen keine Krümmung</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_profiles.py" />
   <source>; it bends by {} from the straight line between the ends, at {}. One undulation for all would hide both.</source>
   <translation>; es weicht um {} von der Geraden zwischen den Enden ab, bei {}. Eine Undulation für alle würde beides verdecken.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/geoid_profiles.py" />
   <source>Grid: {}, cells of {}′; {}.</source>
   <translation>Gitter: {}, Zellen von {}′; {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_list.py" />
   <source>{} without an axis, taken to be on that of the rows above.</source>
   <translation>{} ohne Achse; es gilt die der Zeilen darüber.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_list.py" />
   <source>row stands</source>
   <translation>Zeile steht</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_list.py" />
   <source>rows stand</source>
   <translation>Zeilen stehen</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_list.py" />
   <source>The row is a heading.</source>
   <translation>Die Zeile ist eine Kopfzeile.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_list.py" />
   <source>The row is empty.</source>
   <translation>Die Zeile ist leer.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_list.py" />
   <source>The row is a comment.</source>
   <translation>Die Zeile ist ein Kommentar.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_list.py" />
   <source>The row names the axis '{}' for those below it.</source>
   <translation>Die Zeile nennt die Achse '{}' für die folgenden.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_list.py" />
   <source>Field '{}': {}</source>
   <translation>Feld '{}': {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_list.py" />
   <source>The {} has {}.</source>
   <translation>Spalte {}: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_list.py" />
   <source>The station has {}.</source>
   <translation>Spalte Station: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_list.py" />
   <source>row {} of axis '{}', height {}: looks like {} ({} would fit its neighbours); left as it is</source>
   <translation>Zeile {} der Achse '{}', Höhe {}: vermutlich {} ({} würde zu den Nachbarn passen); so belassen</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_list.py" />
   <source>row {} of axis '{}', station {}: out of the order of the list; left as it is</source>
   <translation>Zeile {} der Achse '{}', Station {}: außer der Reihe der Liste; so belassen</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_list.py" />
   <source>Layer '{}': {} no reading (empty, a heading, a comment or an axis' name): row {}.</source>
   <translation>Layer '{}': {} keine Ablesung (leer, Kopfzeile, Kommentar oder Name einer Achse): Zeile {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_list.py" />
   <source>row is</source>
   <translation>Zeile ist</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_list.py" />
   <source>rows are</source>
   <translation>Zeilen sind</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_system.py" />
   <source>Layer '{}' has no field 'undulation'; choose the field with the undulations (UNDULATION_FIELD).</source>
   <translation>Layer '{}' hat kein Feld 'undulation'; das Feld mit den Undulationen wählen (UNDULATION_FIELD).</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_system.py" />
   <source>The heights are ellipsoidal.</source>
   <translation>Die Höhen sind ellipsoidisch.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_system.py" />
   <source>UNDULATION 'constant' needs UNDULATION_VALUE.</source>
   <translation>UNDULATION 'constant' braucht UNDULATION_VALUE.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_system.py" />
   <source>The heights are above the geoid, with one undulation for all; the geoid's slope and bending are not known to this run.</source>
   <translation>Die Höhen gelten über dem Geoid, mit einer Undulation für alle; Neigung und Krümmung des Geoids sind diesem Lauf nicht bekannt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_system.py" />
   <source>The heights are taken as above a geoid whose undulation is not known: its slope and bending are not allowed for, and heights above the geoid stand in for ellipsoidal ones.</source>
   <translation>Die Höhen gelten als Höhen über einem Geoid, dessen Undulation nicht bekannt ist: Seine Neigung und Krümmung sind nicht berücksichtigt, und Höhen über dem Geoid stehen ersatzweise für ellipsoidische.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_system.py" />
   <source>UNDULATION_VALUE is {}, but the record of layer '{}' says {}; they cannot both be right.</source>
   <translation>UNDULATION_VALUE ist {}, aber das Laufprotokoll des Layers '{}' nennt {}; beides zugleich kann nicht stimmen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_system.py" />
   <source>Layer '{}', row {}: there is no undulation, but UNDULATION is 'field'.</source>
   <translation>Layer '{}', Zeile {}: Die Undulation fehlt, aber UNDULATION ist 'field'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_system.py" />
   <source>The heights are above the geoid, with each station's own undulation from a field.</source>
   <translation>Die Höhen gelten über dem Geoid, mit der eigenen Undulation jeder Station aus einem Feld.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_system.py" />
   <source>Layer '{}' is on the datum '{}', but geoid grids refer to the ellipsoid of WGS 84 or GRS 80; transform the stations first.</source>
   <translation>Layer '{}' hat das Datum '{}', aber Geoidgitter beziehen sich auf das Ellipsoid von WGS 84 oder GRS 80; die Stationen zuerst transformieren.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/height_system.py" />
   <source>The heights are above the geoid; undulations from {} ({} between its nodes; {}), {} to {} m at the stations.</source>
   <translation>Die Höhen gelten über dem Geoid; Undulationen: {} ({} zwischen den Knoten; {}), {} bis {} m an den Stationen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/measured_before.py" />
   <source>{} of {} stations of layer '{}' stand elsewhere than their column 'chainage' says, the first in row {} ({}, now {}): they are measured anew.</source>
   <translation>{} von {} Stationen des Layers '{}' liegen nicht, wo ihre Spalte 'chainage' sie angibt, zuerst in Zeile {} ({}, jetzt {}): sie werden neu gemessen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/measured_before.py" />
   <source>Axis '{}' runs the other way than when layer '{}' was measured: chainages count from its other end, left and right are exchanged.</source>
   <translation>Achse '{}' läuft anders herum als bei der Messung von Layer '{}': die Stationierung zählt vom anderen Ende, links und rechts sind vertauscht.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/measured_before.py" />
   <source>Axes {} run the other way than when layer '{}' was measured: chainages count from their other ends, left and right are exchanged.</source>
   <translation>Die Achsen {} laufen anders herum als bei der Messung von Layer '{}': die Stationierung zählt vom jeweils anderen Ende, links und rechts sind vertauscht.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/measurement_run.py" />
   <source>{} more: see the points.</source>
   <translation>Dazu {}: siehe die Punkte.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/measurement_run.py" />
   <source>Axis '{}': no point belongs to it.</source>
   <translation>Achse '{}': Kein Punkt gehört zu ihr.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/measurement_run.py" />
   <source>Axis '{}': {} from {} to {}, greatest offset {} {}; chainage height {} ({}).</source>
   <translation>Achse '{}': {} von {} bis {}, größter Querabstand {} {}; Stationierungshöhe {} ({}).</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/named_points.py" />
   <source>Layer '{}' has no field {}; choose the field with the stations' names (NAME_FIELD).</source>
   <translation>Layer '{}' hat kein Feld {}; das Feld mit den Namen der Stationen wählen (NAME_FIELD).</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/named_points.py" />
   <source>Layer '{}', field '{}', rows {} and {}: the name '{}' occurs twice.</source>
   <translation>Layer '{}', Feld '{}', Zeilen {} und {}: Der Name '{}' kommt zweimal vor.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/notation.py" />
   <source>Station equations belong to one axis, but there are {}; run that axis alone.</source>
   <translation>Fehlstationen gehören zu einer Achse, hier gibt es aber {}; den Lauf nur für diese Achse ausführen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/place_sigmas.py" />
   <source>Layer '{}': across the axis both standard deviations count, east and north; {} is not enough.</source>
   <translation>Layer '{}': Quer zur Achse zählen beide Standardabweichungen, Ost und Nord; {} genügt nicht.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/place_sigmas.py" />
   <source>Standard deviations of positions from the fields {}: 'sd_line' is what they are across the axis, in their unit.</source>
   <translation>Standardabweichungen der Lagen aus den Feldern {}: 'sd_line' gibt an, was sie quer zur Achse sind, in ihrer Einheit.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/place_sigmas.py" />
   <source>Layer '{}', row {}: the correlation in the field '{}' is {}; it must be from -1 to 1.</source>
   <translation>Layer '{}', Zeile {}: Die Korrelation im Feld '{}' ist {}; sie muss zwischen -1 und 1 liegen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/place_sigmas.py" />
   <source>Layer '{}', row {}: the standard deviation in the field '{}' is {}; it must not be negative.</source>
   <translation>Layer '{}', Zeile {}: Die Standardabweichung im Feld '{}' ist {}; sie darf nicht negativ sein.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/placement_run.py" />
   <source>Layer '{}' has no field 'station' or 'chainage'; choose the field with the station (STATION_FIELD) among {}.</source>
   <translation>Layer '{}' hat kein Feld 'station' oder 'chainage'; das Feld mit der Station wählen (STATION_FIELD) aus {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/placement_run.py" />
   <source>Layer '{}', {}.</source>
   <translation>Layer '{}', {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/placement_run.py" />
   <source>Axis '{}': no row belongs to it.</source>
   <translation>Achse '{}': Keine Zeile gehört zu ihr.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/placement_run.py" />
   <source>Axis '{}': {} placed from {} to {}, axis from {} to {}, chainage height {} ({}).</source>
   <translation>Achse '{}': {} verortet von {} bis {}, Achse von {} bis {}, Stationierungshöhe {} ({}).</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/placement_run.py" />
   <source>row lies</source>
   <translation>Zeile liegt</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/placement_run.py" />
   <source>rows lie</source>
   <translation>Zeilen liegen</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/placement_run.py" />
   <source>There is no axis '{}'; the axes are {}.</source>
   <translation>Es gibt keine Achse '{}'; die Achsen sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/placement_run.py" />
   <source>The row names no axis, and there are {}.</source>
   <translation>Die Zeile nennt keine Achse, und es gibt {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/placement_run.py" />
   <source>The row has no station.</source>
   <translation>Die Zeile hat keine Station.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/placement_run.py" />
   <source>Layer '{}': none of {} can be placed; row {}: {}</source>
   <translation>Layer '{}': Von {} lässt sich keine verorten; Zeile {}: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/placement_run.py" />
   <source>Layer '{}' has no column of heights; choose it (HEIGHT_FIELD) among {}.</source>
   <translation>Layer '{}' hat keine Spalte mit Höhen; Spalte wählen (HEIGHT_FIELD) aus {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/placement_run.py" />
   <source>Layer '{}', field '{}': no row has a height; the columns are {}.</source>
   <translation>Layer '{}', Feld '{}': Keine Zeile hat eine Höhe; die Spalten sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/placement_run.py" />
   <source>station from {}, offset from {}, height from {}, axis from {}</source>
   <translation>Station: {}, Querabstand: {}, Höhe: {}, Achse: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/placement_run.py" />
   <source>Understood: {} of layer '{}' and {}; {}; heights in {}, chainages in {}.</source>
   <translation>Verstanden: {} aus Layer '{}' und {}; {}; Höhen in {}, Stationierung in {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/placement_run.py" />
   <source>Columns: {}.</source>
   <translation>Spalten: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/placement_run.py" />
   <source>{} placed, {} of them without a height; {} rejected.</source>
   <translation>{} verortet, davon {} ohne Höhe; {} zurückgewiesen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/recorded_covariance.py" />
   <source>, plus a standard deviation of {} for every height by itself</source>
   <translation>, dazu eine Standardabweichung von {} für jede einzelne Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/recorded_covariance.py" />
   <source>{0} is the layer '{1}', but the record of layer '{2}' says that the covariance of its heights is in '{3}', which holds another one; leave {0} empty, or give that table.</source>
   <translation>{0} ist der Layer '{1}', aber nach dem Laufprotokoll des Layers '{2}' steht die Kovarianz seiner Höhen in '{3}', und das ist eine andere; {0} leer lassen oder jene Tabelle angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/recorded_covariance.py" />
   <source>the table with their covariance, '{}', no longer exists</source>
   <translation>die Tabelle mit ihrer Kovarianz, '{}', existiert nicht mehr</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/recorded_covariance.py" />
   <source>their covariance was not kept in a file</source>
   <translation>ihre Kovarianz wurde nicht in einer Datei aufbewahrt</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/recorded_covariance.py" />
   <source>Layer '{}': its heights are from an adjustment, but {}; their correlation is ignored.</source>
   <translation>Layer '{}': Seine Höhen stammen aus einer Ausgleichung, aber {}; ihre Korrelation bleibt unberücksichtigt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/recorded_covariance.py" />
   <source>Layer '{}' rests on an adjustment with {} left in it: heights there may be wrong, and their accuracies do not tell it.</source>
   <translation>Layer '{}' beruht auf einer Ausgleichung mit offenem Verdacht ({}): Höhen dort können falsch sein, und ihre Genauigkeiten zeigen es nicht.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/recorded_covariance.py" />
   <source>Layer '{}' rests on an adjustment whose global test failed (variance factor {}, {}): accuracies and verdicts that rest on it are too good.</source>
   <translation>Layer '{}' beruht auf einer Ausgleichung, deren Globaltest nicht bestanden ist (Varianzfaktor {}, {}): Genauigkeiten und Urteile, die darauf beruhen, sind zu gut.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/recorded_covariance.py" />
   <source>Layer '{}' rests on an adjustment whose global test failed (variance factor {}, {}): its lines agree better than was stated of them, and accuracies that rest on it are too poor.</source>
   <translation>Layer '{}' beruht auf einer Ausgleichung, deren Globaltest nicht bestanden ist (Varianzfaktor {}, {}): Ihre Linien stimmen besser überein als angegeben, und Genauigkeiten, die darauf beruhen, sind zu schlecht.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/recorded_covariance.py" />
   <source>Layer '{}' is not a table of covariances: it lacks the field {}.</source>
   <translation>Layer '{}' ist keine Tabelle von Kovarianzen: Es fehlt das Feld {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/reviewed_stations.py" />
   <source>Layer '{}' has no field 'residual'; run 'Design heights and residuals' first and give its output.</source>
   <translation>Layer '{}' hat kein Feld 'residual'; zuerst 'Soll-Höhen und Abweichungen' ausführen und dessen Ausgabe angeben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/reviewed_stations.py" />
   <source>Layer '{}', row {}: station {} is on several axes ({}); name the axis.</source>
   <translation>Layer '{}', Zeile {}: Station {} liegt auf mehreren Achsen ({}); die Achse nennen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/reviewed_stations.py" />
   <source>Layer '{}' (TESTED) holds no tested stations: it lacks the field {}.</source>
   <translation>Layer '{}' (TESTED) enthält keine getesteten Stationen: Es fehlt das Feld {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/reviewed_stations.py" />
   <source>No station of layer '{}' (TESTED) is one of layer '{}'; axis and station must agree.</source>
   <translation>Keine Station des Layers '{}' (TESTED) kommt in Layer '{}' vor; Achse und Station müssen übereinstimmen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/reviewed_stations.py" />
   <source>Layer '{}' (TESTED) has {} stations that layer '{}' does not have.</source>
   <translation>Layer '{}' (TESTED) hat {} Station(en), die Layer '{}' nicht hat.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/reviewed_stations.py" />
   <source>Layer '{}' holds no decisions: it lacks the field {}.</source>
   <translation>Layer '{}' enthält keine Entscheidungen: Es fehlt das Feld {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/reviewed_stations.py" />
   <source>Layer '{}', field 'decision', row {}: '{}' is not known; known are {}.</source>
   <translation>Layer '{}', Feld 'decision', Zeile {}: '{}' ist nicht bekannt; bekannt sind {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/reviewed_stations.py" />
   <source>Layer '{}' has two decisions for {} {}; the later one, '{}', counts.</source>
   <translation>Layer '{}' hat zwei Entscheidungen für {} {}; es gilt die spätere, '{}'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/reviewed_stations.py" />
   <source>Layer '{}' decides about stations that layer '{}' does not have: {}.</source>
   <translation>Layer '{}' enthält Entscheidungen über Stationen, die Layer '{}' nicht hat: {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/stated_slope.py" />
   <source>{} is missing: a stated slope of the geoid needs GEOID_SLOPE_E and GEOID_SLOPE_N.</source>
   <translation>{} fehlt: Eine angegebene Geoidneigung braucht GEOID_SLOPE_E und GEOID_SLOPE_N.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/stated_slope.py" />
   <source>GEOID_SLOPE_E and GEOID_SLOPE_N are given, but UNDULATION '{}' brings a slope of the geoid of its own; leave them empty, or choose another UNDULATION.</source>
   <translation>GEOID_SLOPE_E und GEOID_SLOPE_N sind angegeben, aber UNDULATION '{}' bringt eine eigene Geoidneigung mit; sie leer lassen oder eine andere UNDULATION wählen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/stated_slope.py" />
   <source>{} is {}: no geoid slopes by more than {} seconds of arc.</source>
   <translation>{} ist {}: Kein Geoid ist um mehr als {} Bogensekunden geneigt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/stated_slope.py" />
   <source>{}″ to the east, {}″ to the north</source>
   <translation>{}″ nach Osten, {}″ nach Norden</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/structure.py" />
   <source>No value of the field '{}' of layer '{}' names an axis; each station goes to its nearest axis.</source>
   <translation>Kein Wert des Feldes '{}' im Layer '{}' nennt eine Achse; jede Station gehört zu ihrer nächsten Achse.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/structure.py" />
   <source>All stations of layer '{}' are farther than {} m from every axis, the nearest {} m; check the layers' coordinate reference systems or raise MAX_DISTANCE.</source>
   <translation>Alle Stationen des Layers '{}' sind weiter als {} m von jeder Achse entfernt, die nächste {} m; die Koordinatenbezugssysteme der Layer prüfen oder MAX_DISTANCE erhöhen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/structure.py" />
   <source>Layer '{}': {} of {} farther than {} m from every axis: {} {}.</source>
   <translation>Layer '{}': {} von {} weiter als {} m von jeder Achse entfernt: {} {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/structure.py" />
   <source>{} stations lie</source>
   <translation>{} Stationen liegen</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/vertical_system.py" />
   <source>Layer '{}': by its reference system '{}' Z is ellipsoidal, but {} is '{}', which is above a geoid.</source>
   <translation>Layer '{}': Nach seinem Bezugssystem '{}' ist Z ellipsoidisch, aber {} ist '{}', also über einem Geoid.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/vertical_system.py" />
   <source>Layer '{}': by its reference system heights are '{}', above a geoid, but {} is 'ellipsoidal'.</source>
   <translation>Layer '{}': Nach seinem Bezugssystem sind Höhen '{}', über einem Geoid, aber {} ist 'ellipsoidal'.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/vertical_system.py" />
   <source>Layer '{}': the Z of its reference system '{}' counts downwards; heights count upwards.</source>
   <translation>Layer '{}': Das Z seines Bezugssystems '{}' zählt nach unten; Höhen zählen nach oben.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/vertical_system.py" />
   <source>Layer '{}': by its reference system '{}' one unit of Z is {} m, but HEIGHT_UNIT says {}.</source>
   <translation>Layer '{}': Nach seinem Bezugssystem '{}' ist eine Einheit von Z {} m, aber HEIGHT_UNIT sagt {}.</translation>
  </message>
  <message>
   <location filename="../../algorithms/structure/what_if_places.py" />
   <source>The height system is not recorded; the heights are taken as above a geoid that is not known.</source>
   <translation>Das Höhensystem ist nicht aufgezeichnet; die Höhen gelten als Höhen über einem unbekannten Geoid.</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/bar_strokes.py" />
   <source>Built high, above the tolerance: {} of the axis</source>
   <translation>Zu hoch, über der Toleranz: {} der Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/bar_strokes.py" />
   <source>Built low, below the tolerance: {} of the axis</source>
   <translation>Zu tief, unter der Toleranz: {} der Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/bar_strokes.py" />
   <source>Within the tolerance</source>
   <translation>Innerhalb der Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/bar_strokes.py" />
   <source>Built high: {} of the axis</source>
   <translation>Zu hoch: {} der Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/bar_strokes.py" />
   <source>Built low: {} of the axis</source>
   <translation>Zu tief: {} der Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/bar_strokes.py" />
   <source>Cut: the bar would be longer</source>
   <translation>Gekürzt: Der Balken wäre länger</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/bar_strokes.py" />
   <source> (cut)</source>
   <translation> (gekürzt)</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/bar_strokes.py" />
   <source>, cut</source>
   <translation>, gekürzt</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/bar_strokes.py" />
   <source>Bar on the ground</source>
   <translation>Balken im Gelände</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/change_look.py" />
   <source>Possible change</source>
   <translation>Mögliche Änderung</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/change_look.py" />
   <source>No significant change</source>
   <translation>Keine signifikante Änderung</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/change_look.py" />
   <source>Higher than before, not judged</source>
   <translation>Höher als zuvor, nicht beurteilt</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/change_look.py" />
   <source>Lower than before, not judged</source>
   <translation>Tiefer als zuvor, nicht beurteilt</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/change_look.py" />
   <source>Moved left or right</source>
   <translation>Nach links oder rechts bewegt</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/change_look.py" />
   <source>not compared</source>
   <translation>nicht verglichen</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/change_look.py" />
   <source>Line: change </source>
   <translation>Linie: Änderung </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/change_look.py" />
   <source>Common to the axis </source>
   <translation>Gemeinsam für die Achse </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/change_look.py" />
   <source>Differential movement </source>
   <translation>Verformung </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/change_look.py" />
   <source>Rate per year </source>
   <translation>Rate pro Jahr </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/change_look.py" />
   <source>Change </source>
   <translation>Änderung </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/change_look.py" />
   <source>± is one standard deviation.</source>
   <translation>± ist eine Standardabweichung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/deviations.py" />
   <source>Residuals {}: 100 m on the ground stand for {}</source>
   <translation>Abweichungen {}: 100 m im Gelände bedeuten {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/deviations.py" />
   <source>Lateral departures</source>
   <translation>Querabweichungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/deviations.py" />
   <source>Lateral departures {}: 100 m on the ground stand for {}</source>
   <translation>Querabweichungen {}: 100 m im Gelände bedeuten {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/deviations.py" />
   <source>Tolerance of each axis</source>
   <translation>Toleranz jeder Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/deviations.py" />
   <source>Tolerance ±{}</source>
   <translation>Toleranz ±{}</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/deviations.py" />
   <source>drawn {}</source>
   <translation>gezeichnet {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/deviations.py" />
   <source>Heights {} from the design line</source>
   <translation>Höhen {} gegenüber der Soll-Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/deviations.py" />
   <source>Heights {} above the level line</source>
   <translation>Höhen {} über der Niveaulinie</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/deviations.py" />
   <source>Heights {}</source>
   <translation>Höhen {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/deviations.py" />
   <source>Plan, true to scale along, across {}</source>
   <translation>Grundriss, längs maßstäblich, quer {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/lateral_strokes.py" />
   <source>Left of the line, beyond its tolerance</source>
   <translation>Links der Linie, jenseits ihrer Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/lateral_strokes.py" />
   <source>Right of the line, beyond its tolerance</source>
   <translation>Rechts der Linie, jenseits ihrer Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/lateral_strokes.py" />
   <source>Within the tolerance of the line</source>
   <translation>Innerhalb der Toleranz der Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/lateral_strokes.py" />
   <source>Left or right of the line</source>
   <translation>Links oder rechts der Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>No benchmark reached: not adjusted</source>
   <translation>Ohne Höhenfestpunkt: nicht ausgeglichen</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>Checked by no other line</source>
   <translation>Von keiner anderen Linie kontrolliert</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>|w| up to 1.96</source>
   <translation>|w| bis 1,96</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>|w| 1.96 to the limit</source>
   <translation>|w| 1,96 bis zur Grenze</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>|w| beyond the limit: blunder suspected</source>
   <translation>|w| über der Grenze: grober Fehler vermutet</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>Test value w = </source>
   <translation>Testgröße w = </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>A blunder of </source>
   <translation>Ein grober Fehler von </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source> would be found with a probability of 80 %.</source>
   <translation> würde mit einer Wahrscheinlichkeit von 80 % aufgedeckt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>No other line checks it.</source>
   <translation>Keine andere Linie kontrolliert sie.</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>Observed </source>
   <translation>Beobachtet </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>, observed minus adjusted </source>
   <translation>, beobachtet minus ausgeglichen </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>Benchmark, held fixed</source>
   <translation>Höhenfestpunkt, festgehalten</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>Benchmark, adjusted with the lines</source>
   <translation>Höhenfestpunkt, mit den Linien ausgeglichen</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>No adjusted height</source>
   <translation>Keine ausgeglichene Höhe</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>Height </source>
   <translation>Höhe </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>, standard deviation </source>
   <translation>, Standardabweichung </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>No height: no line ties it to a benchmark. </source>
   <translation>Keine Höhe: Keine Linie verbindet den Punkt mit einem Höhenfestpunkt. </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/level_lines.py" />
   <source>Adjusted minus given </source>
   <translation>Ausgeglichen minus gegeben </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/plan_lines.py" />
   <source>Scale bar across: {}</source>
   <translation>Maßstabsbalken quer: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/plan_lines.py" />
   <source>Scale bar across</source>
   <translation>Maßstabsbalken quer</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/plan_lines.py" />
   <source>As built, seen from above</source>
   <translation>Ist, von oben gesehen</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/plan_lines.py" />
   <source>The line</source>
   <translation>Die Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/plan_lines.py" />
   <source>Edge on the axis' side</source>
   <translation>Rand auf der Achsseite</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/plan_lines.py" />
   <source>Grid of lateral departures</source>
   <translation>Gitter der Querabweichungen</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/plan_lines.py" />
   <source>Stations along the axis</source>
   <translation>Stationen entlang der Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/plan_lines.py" />
   <source>Strip: right of the line is drawn right</source>
   <translation>Streifen: rechts der Linie ist rechts gezeichnet</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source>Tangent point: parallel to the ellipsoid</source>
   <translation>Berührpunkt: parallel zum Ellipsoid</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source>Level point: water stands still</source>
   <translation>Horizontalpunkt: hier steht Wasser still</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source>Fitted; where it is level is poorly determined</source>
   <translation>Eingepasst; wo horizontal, ist schlecht bestimmt</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source>, outside the stations</source>
   <translation>, außerhalb der Stationen</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source> stations, RMS </source>
   <translation> Stationen, RMS </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source>; set aside: </source>
   <translation>; ausgesondert: </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source>Global test:</source>
   <translation>Globaltest:</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source>Level point, 95 %</source>
   <translation>Horizontalpunkt, 95 %</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source>Tangent point, 95 %</source>
   <translation>Berührpunkt, 95 %</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source>Kept</source>
   <translation>Behalten</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source>Not fitted: too few on its leg</source>
   <translation>Nicht eingepasst: zu wenige auf dem Abschnitt</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source>Off axis: not fitted</source>
   <translation>Abseits der Achse: nicht eingepasst</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source>Suspected blunder</source>
   <translation>Vermuteter grober Fehler</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source>Suspected blunder in line</source>
   <translation>Vermuteter grober Fehler, Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source>Residual from the fit </source>
   <translation>Abweichung vom Ausgleich </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source>In plan: </source>
   <translation>Im Grundriss: </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/reference_marks.py" />
   <source> would be found here with a probability of 80 %.</source>
   <translation> würde hier mit einer Wahrscheinlichkeit von 80 % aufgedeckt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_symbols.py" />
   <source>High: above the tolerance</source>
   <translation>Zu hoch: über der Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_symbols.py" />
   <source>Low: below the tolerance</source>
   <translation>Zu tief: unter der Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_symbols.py" />
   <source>Built high, no tolerance</source>
   <translation>Zu hoch, ohne Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_symbols.py" />
   <source>Built low, no tolerance</source>
   <translation>Zu tief, ohne Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_symbols.py" />
   <source>Off axis: not reviewed</source>
   <translation>Abseits der Achse: nicht geprüft</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source> on axis </source>
   <translation> auf Achse </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>As built </source>
   <translation>Ist-Höhe </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>, design </source>
   <translation>, Soll-Höhe </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>Design </source>
   <translation>Soll-Höhe </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>; no as-built height here. </source>
   <translation>; hier keine Ist-Höhe. </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>, above the tolerance</source>
   <translation>, über der Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>, below the tolerance</source>
   <translation>, unter der Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>, within the tolerance</source>
   <translation>, innerhalb der Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>Built high by </source>
   <translation>Zu hoch um </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>Built low by </source>
   <translation>Zu tief um </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>Built at its design height</source>
   <translation>Auf Soll-Höhe gebaut</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>No adjustment needed. </source>
   <translation>Keine Korrektur nötig. </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>Raise by </source>
   <translation>Heben um </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>Lower by </source>
   <translation>Senken um </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source> here, compared with no curvature.</source>
   <translation> gegenüber der Rechnung ohne Erdkrümmung.</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>Curvature raises the design by </source>
   <translation>Die Erdkrümmung hebt den Entwurf hier um </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>Curvature lowers the design by </source>
   <translation>Die Erdkrümmung senkt den Entwurf hier um </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>Curvature makes no difference here.</source>
   <translation>Die Erdkrümmung macht hier keinen Unterschied.</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>, beyond the tolerance of the line</source>
   <translation>, jenseits der Toleranz der Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>, within the tolerance of the line</source>
   <translation>, innerhalb der Toleranz der Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>Line: </source>
   <translation>Linie: </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/review_tip.py" />
   <source>Too far from every axis to be reviewed.</source>
   <translation>Für eine Prüfung zu weit von jeder Achse entfernt.</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/schedule_look.py" />
   <source>Raise</source>
   <translation>Heben</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/schedule_look.py" />
   <source>Lower</source>
   <translation>Senken</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/schedule_look.py" />
   <source>Keep, out of tolerance</source>
   <translation>Belassen, außerhalb der Toleranz</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/schedule_look.py" />
   <source>Left out: suspected blunder</source>
   <translation>Ausgelassen: vermuteter grober Fehler</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/schedule_look.py" />
   <source>Off axis: not scheduled</source>
   <translation>Abseits der Achse: nicht eingeplant</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/schedule_look.py" />
   <source>Move left or right as well</source>
   <translation>Auch nach links oder rechts bewegen</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/schedule_look.py" />
   <source>raise </source>
   <translation>heben um </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/schedule_look.py" />
   <source>lower </source>
   <translation>senken um </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/schedule_look.py" />
   <source>move left </source>
   <translation>nach links um </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/schedule_look.py" />
   <source>move right </source>
   <translation>nach rechts um </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/schedule_look.py" />
   <source>Residual now </source>
   <translation>Abweichung jetzt </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/schedule_look.py" />
   <source>, predicted </source>
   <translation>, vorausgesagt </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/schedule_look.py" />
   <source>Stands </source>
   <translation>Liegt </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/station_marks.py" />
   <source> right of the axis</source>
   <translation> rechts der Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/station_marks.py" />
   <source> left of the axis</source>
   <translation> links der Achse</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/station_marks.py" />
   <source>Chainage </source>
   <translation>Stationierung </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/station_marks.py" />
   <source>Offset </source>
   <translation>Querabstand </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/station_marks.py" />
   <source>Azimuth of the axis </source>
   <translation>Azimut der Achse </translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/strip_lines.py" />
   <source>Level line through the design's first station</source>
   <translation>Niveaulinie durch die erste Station des Entwurfs</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/strip_lines.py" />
   <source>Design: the straight line</source>
   <translation>Entwurf: die gerade Linie</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/strip_lines.py" />
   <source>As built</source>
   <translation>Ist</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/strip_lines.py" />
   <source>Design with no curvature</source>
   <translation>Entwurf ohne Erdkrümmung</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/strip_lines.py" />
   <source>Scale bar of the heights: {}</source>
   <translation>Maßstabsbalken der Höhen: {}</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/strip_lines.py" />
   <source>Scale bar of the heights</source>
   <translation>Maßstabsbalken der Höhen</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/strip_lines.py" />
   <source>Datum line, on the axis' side</source>
   <translation>Bezugslinie, auf der Achsseite</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/strip_lines.py" />
   <source>Grid of heights</source>
   <translation>Gitter der Höhen</translation>
  </message>
  <message>
   <location filename="../../algorithms/styles/strip_lines.py" />
   <source>Strip: heights grow away from the axis</source>
   <translation>Streifen: Höhen wachsen von der Achse weg</translation>
  </message>
  <message>
   <location filename="../../algorithms/test_curvature.py" />
   <source>Asks the heights themselves which shape was built, without a design: the curvature factor f is 1 for a structure that is straight in space and 0 for one at a constant slope above the level surface, such as water. Its 95 % interval, which allows for the accuracy of the heights and for the bending of the geoid, decides: straight, level, neither, or undecided, with what would decide it.

A straight line computed with no curvature and a constant grade on the real Earth are the same curve, so the test cannot tell them apart; it tells what the structure follows. 31 equally spaced stations good to 3 mm decide from about 600 m on, good to 10 mm from about 1.1 km, as far as the geoid does not bend; fewer stations need more length.

Outputs are a table and, if asked, one HTML page with a picture that a layman can read.</source>
   <translation>Fragt die Höhen selbst, welche Form gebaut wurde, ohne Entwurf: Der Krümmungsfaktor f ist 1 für ein Bauwerk, das im Raum gerade ist, und 0 für eines mit konstanter Neigung über der Niveaufläche, wie Wasser. Sein 95-%-Intervall, das die Genauigkeit der Höhen und die Krümmung des Geoids berücksichtigt, entscheidet: gerade, niveaugleich, keines von beiden oder unentschieden, mit der Angabe, was entscheiden würde.

Eine ohne Erdkrümmung gerechnete Gerade und eine konstante Neigung auf der wirklichen Erde sind dieselbe Kurve, der Test kann sie also nicht unterscheiden; er sagt, welcher Fläche das Bauwerk folgt. 31 Stationen in gleichen Abständen, auf 3 mm genau, entscheiden ab etwa 600 m, auf 10 mm genau ab etwa 1,1 km, soweit das Geoid nicht gekrümmt ist; weniger Stationen brauchen mehr Länge.

Ausgegeben werden eine Tabelle und auf Wunsch eine HTML-Seite mit einem Bild, das auch Laien lesen können.</translation>
  </message>
  <message>
   <location filename="../../algorithms/test_curvature.py" />
   <source>Test which shape was built</source>
   <translation>Gebaute Form testen</translation>
  </message>
  <message>
   <location filename="../../algorithms/test_curvature.py" />
   <source>curved</source>
   <translation>gekrümmt</translation>
  </message>
  <message>
   <location filename="../../algorithms/test_curvature.py" />
   <source>test</source>
   <translation>Test</translation>
  </message>
  <message>
   <location filename="../../algorithms/test_curvature.py" />
   <source>Page</source>
   <translation>Seite</translation>
  </message>
  <message>
   <location filename="../../algorithms/test_curvature.py" />
   <source>One file that opens offline: a sentence, a picture and the numbers for each axis.</source>
   <translation>Eine Datei, die ohne Internet öffnet: für jede Achse ein Satz, ein Bild und die Zahlen.</translation>
  </message>
  <message>
   <location filename="../../algorithms/test_curvature.py" />
   <source>A row for each axis or leg: curvature factor with its 95 % interval, verdict, and RMS of each shape.</source>
   <translation>Eine Zeile für jede Achse oder jeden Abschnitt: Krümmungsfaktor mit 95-%-Intervall, Urteil und RMS jeder Form.</translation>
  </message>
  <message>
   <location filename="../../algorithms/test_curvature.py" />
   <source>Axes and legs tested</source>
   <translation>Getestete Achsen und Abschnitte</translation>
  </message>
  <message>
   <location filename="../../algorithms/test_curvature.py" />
   <source>Curvature factor of the first</source>
   <translation>Krümmungsfaktor der ersten</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/decision_store.py" />
   <source>The table '{}' in {} is not a table of decisions: it lacks the field {}.</source>
   <translation>Die Tabelle '{}' in {} ist keine Tabelle der Entscheidungen: Es fehlt das Feld {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/decision_store.py" />
   <source>The decision could not be saved in {}: {}.</source>
   <translation>Die Entscheidung ließ sich nicht speichern in {}: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/decision_store.py" />
   <source>the place is read-only</source>
   <translation>der Ort ist schreibgeschützt</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/decision_store.py" />
   <source>The decisions cannot be saved as {}: there is a folder of that name.</source>
   <translation>Die Entscheidungen lassen sich nicht als {} speichern: Es gibt einen Ordner dieses Namens.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/decision_store.py" />
   <source>The decisions cannot be saved as {}: its name must end in .gpkg.</source>
   <translation>Die Entscheidungen lassen sich nicht als {} speichern: Der Name muss auf .gpkg enden.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/decision_store.py" />
   <source>The decisions cannot be saved as {}: {}.</source>
   <translation>Die Entscheidungen lassen sich nicht als {} speichern: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/dock.py" />
   <source>Flagged stations</source>
   <translation>Markierte Stationen</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/dock.py" />
   <source>There are no stations to review yet.

Run 'Design heights and residuals' from the toolbox, or open the example from the menu Plugins, Tautline.</source>
   <translation>Es gibt noch keine Stationen zu prüfen.

'Soll-Höhen und Abweichungen' aus der Werkzeugkiste ausführen oder das Beispiel im Menü Erweiterungen, Tautline öffnen.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/dock.py" />
   <source>All stations with an as-built height are within the tolerance; no blunder is suspected.</source>
   <translation>Alle Stationen mit Ist-Höhe liegen innerhalb der Toleranz; kein grober Fehler ist vermutet.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/dock.py" />
   <source>No station is flagged: the run that made this layer had no tolerance and tested for no blunders. Run it again with a tolerance to have stations judged.</source>
   <translation>Keine Station ist markiert: Der Lauf, der diesen Layer erzeugt hat, hatte keine Toleranz und testete nicht auf grobe Fehler. Mit einer Toleranz erneut ausführen, damit Stationen beurteilt werden.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/dock.py" />
   <source>{}, {} decided</source>
   <translation>{}, {} entschieden</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/dock.py" />
   <source>Decisions are kept in {}</source>
   <translation>Entscheidungen stehen in {}</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/dock.py" />
   <source>This layer is temporary: you will be asked where to keep the decisions.</source>
   <translation>Dieser Layer ist temporär: Der Ort für die Entscheidungen wird erfragt.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/dock.py" />
   <source>Choose a station: up and down in the list, or click it in the map or the profile.</source>
   <translation>Eine Station wählen: auf und ab in der Liste oder durch Klick in der Karte oder im Längsschnitt.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/dock.py" />
   <source>Layer '{}' is temporary, so decisions cannot be kept beside it.</source>
   <translation>Layer '{}' ist temporär, die Entscheidungen lassen sich daher nicht neben ihm ablegen.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/dock.py" />
   <source>'{}' was run again with the same settings.</source>
   <translation>'{}' wurde mit denselben Einstellungen erneut ausgeführt.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/dock.py" />
   <source>By {}, {}</source>
   <translation>Von {}, {}</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/model.py" />
   <source>Why</source>
   <translation>Grund</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/model.py" />
   <source>Decision</source>
   <translation>Entscheidung</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/model.py" />
   <source>Lateral</source>
   <translation>Quer</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>All of them</source>
   <translation>Alle</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Without a decision</source>
   <translation>Ohne Entscheidung</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Stations listed</source>
   <translation>Aufgeführte Stationen</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Which stations are listed.</source>
   <translation>Welche Stationen aufgeführt sind.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Flagged stations, worst first</source>
   <translation>Markierte Stationen, die schlimmste zuerst</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Up and down go from station to station, the number keys decide, Enter zooms the map.</source>
   <translation>Auf und ab führen von Station zu Station, die Zifferntasten entscheiden, Enter zoomt die Karte.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Note: why, or what is to be done</source>
   <translation>Notiz: warum, oder was zu tun ist</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Note</source>
   <translation>Notiz</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Previous</source>
   <translation>Vorige</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Previous station (Alt+Up)</source>
   <translation>Vorige Station (Alt+Pfeil hoch)</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Next</source>
   <translation>Nächste</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Next station (Alt+Down)</source>
   <translation>Nächste Station (Alt+Pfeil runter)</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Undo</source>
   <translation>Rückgängig</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Take the last decision back (Ctrl+Z)</source>
   <translation>Die letzte Entscheidung zurücknehmen (Strg+Z)</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Redo</source>
   <translation>Wiederholen</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Decide again what was taken back (Ctrl+Shift+Z)</source>
   <translation>Erneut entscheiden, was zurückgenommen wurde (Strg+Umschalt+Z)</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Show profile</source>
   <translation>Längsschnitt</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Open the profile of these stations.</source>
   <translation>Den Längsschnitt dieser Stationen öffnen.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Run again</source>
   <translation>Erneut ausführen</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/panel.py" />
   <source>Repeat the run that made this layer, with the same settings, after the stations were edited.</source>
   <translation>Den Lauf, der diesen Layer erzeugt hat, mit denselben Einstellungen wiederholen, nachdem Stationen bearbeitet wurden.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/questions.py" />
   <source>Where should the decisions on these stations be kept?</source>
   <translation>Wo sollen die Entscheidungen über diese Stationen stehen?</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/questions.py" />
   <source>Choose a place…</source>
   <translation>Ort wählen…</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/questions.py" />
   <source>Place for the decisions</source>
   <translation>Ort für die Entscheidungen</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/questions.py" />
   <source>GeoPackage (*.gpkg)</source>
   <translation>GeoPackage (*.gpkg)</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/questions.py" />
   <source>The edits of '{}' are not saved.</source>
   <translation>Die Änderungen an '{}' sind nicht gespeichert.</translation>
  </message>
  <message>
   <location filename="../../plugin/decisions/questions.py" />
   <source>They must be saved before the run can use them.</source>
   <translation>Sie müssen gespeichert sein, bevor der Lauf sie verwenden kann.</translation>
  </message>
  <message>
   <location filename="../../plugin/example.py" />
   <source>Open the example</source>
   <translation>Beispiel öffnen</translation>
  </message>
  <message>
   <location filename="../../plugin/example.py" />
   <source>Where should the example be put?</source>
   <translation>Wo soll das Beispiel abgelegt werden?</translation>
  </message>
  <message>
   <location filename="../../plugin/example.py" />
   <source>It gets a folder of its own with the project, the layers and the results, about 2 MB. A temporary folder is enough to look around.</source>
   <translation>Es erhält einen eigenen Ordner mit dem Projekt, den Layern und den Ergebnissen, etwa 2 MB. Zum Umsehen genügt ein temporärer Ordner.</translation>
  </message>
  <message>
   <location filename="../../plugin/example.py" />
   <source>Temporary folder</source>
   <translation>Temporärer Ordner</translation>
  </message>
  <message>
   <location filename="../../plugin/example.py" />
   <source>Place for the example</source>
   <translation>Ort für das Beispiel</translation>
  </message>
  <message>
   <location filename="../../plugin/example.py" />
   <source>Fitted plane</source>
   <translation>Eingepasste Ebene</translation>
  </message>
  <message>
   <location filename="../../plugin/example.py" />
   <source>Its layer '{}' cannot be read.</source>
   <translation>Sein Layer '{}' lässt sich nicht lesen.</translation>
  </message>
  <message>
   <location filename="../../plugin/example.py" />
   <source>Example: range</source>
   <translation>Beispiel: Versuchsanlage</translation>
  </message>
  <message>
   <location filename="../../plugin/example.py" />
   <source>The example could not be made in '{}': {}</source>
   <translation>Das Beispiel ließ sich nicht in '{}' anlegen: {}</translation>
  </message>
  <message>
   <location filename="../../plugin/example.py" />
   <source>The example's project could not be saved in '{}': {}</source>
   <translation>Das Projekt des Beispiels ließ sich nicht in '{}' speichern: {}</translation>
  </message>
  <message>
   <location filename="../../plugin/example.py" />
   <source>▲ stand over 10 mm too high, ▼ too low; more in 'Read me first'.</source>
   <translation>▲ liegen über 10 mm zu hoch, ▼ zu tief; mehr in 'Zuerst lesen'.</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>Straight is not level</source>
   <translation>Gerade ist nicht waagerecht</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>This range is invented. From its hub three covered runs carry light over a high plain: Alder, 2.6 km long, Birch, 1.9 km, and Cedar, 1.3 km. They were meant to lie in one flat plane, as straight as the light. The level surface, on which water would come to rest, is not flat: over the length of Alder it falls 0.52 m below the line that starts out along it. So the heights above the sea must rise towards the far end, although nothing bends.</source>
   <translation>Diese Anlage ist erfunden. Von ihrer Mitte aus führen drei überdachte Trassen Licht über eine Hochebene: Alder, 2,6 km lang, Birch, 1,9 km, und Cedar, 1,3 km. Sie sollten in einer einzigen ebenen Fläche liegen, so gerade wie das Licht. Die Niveaufläche, auf der Wasser zur Ruhe käme, ist nicht eben: Auf der Länge von Alder fällt sie 0,52 m unter die Gerade, die in ihrer Richtung beginnt. Die Höhen über dem Meer müssen also zum fernen Ende hin steigen, obwohl sich nichts krümmt.</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>What the map shows</source>
   <translation>Was die Karte zeigt</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>Each mark is a station. Small circles, green, are within 10 mm of the plane; triangles that point up, orange, were built too high, those that point down, blue, too low; white circles were not read.</source>
   <translation>Jede Marke ist eine Station. Kleine grüne Kreise liegen innerhalb von 10 mm zur Ebene; orange Dreiecke mit der Spitze nach oben wurden zu hoch gebaut, blaue mit der Spitze nach unten zu tief; weiße Kreise wurden nicht abgelesen.</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>0+850 of Alder is one station far off between good neighbours: most likely a reading error. Around 1+650 several neighbours are low together: the ground has settled. On Cedar nothing is out in height.</source>
   <translation>0+850 auf Alder ist eine einzelne Station, weit ab zwischen guten Nachbarn: höchstwahrscheinlich ein Ablesefehler. Um 1+650 liegen mehrere Nachbarn gemeinsam zu tief: Der Untergrund hat sich gesetzt. Auf Cedar weicht in der Höhe nichts ab.</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>Level is how high a station stands, line how far to the side, and one says nothing of the other. 0+900 of Cedar is right in height, but a wheel has knocked it 15 mm to the left of the straight line that fits its run best: that line judges, for the axis was drawn by hand on the imagery.</source>
   <translation>Die Höhe sagt, wie hoch eine Station liegt, die Linie, wie weit seitlich, und das eine sagt nichts über das andere. 0+900 auf Cedar stimmt in der Höhe, aber ein Rad hat die Station 15 mm nach links von der Geraden gestoßen, die ihre Trasse am besten ausgleicht: Diese Linie gibt das Urteil, denn die Achse wurde von Hand auf dem Luftbild gezeichnet.</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>The triangle is the level point of the plane that fits all three runs best: only there would water on it stand still. The cross is its tangent point, where it is parallel to the ellipsoid of the coordinates.</source>
   <translation>Das Dreieck ist der Horizontalpunkt der ausgleichenden Ebene aller drei Trassen: Nur dort stünde Wasser auf ihr still. Das Kreuz ist ihr Berührpunkt, wo sie parallel zum Ellipsoid der Koordinaten ist.</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>The ellipses say how well these places are known: each lies inside its own with a probability of 95 percent. Levelling finds the level point by itself; the tangent point also needs to know which way is down, and one second of arc moves it by 31 m.</source>
   <translation>Die Ellipsen sagen, wie gut diese Orte bekannt sind: Jeder liegt mit einer Wahrscheinlichkeit von 95 Prozent in seiner. Den Horizontalpunkt findet das Nivellement allein; der Berührpunkt braucht auch die Lotrichtung, und eine Bogensekunde verschiebt ihn um 31 m.</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>Bars across the runs are the residuals, exaggerated; a bar that leaves the pale band is out of tolerance. The strip beside each run is its profile.</source>
   <translation>Balken quer zu den Trassen sind die Abweichungen, überhöht; ein Balken, der das blasse Band verlässt, liegt außerhalb der Toleranz. Der Streifen neben jeder Trasse ist ihr Längsschnitt.</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>What to try</source>
   <translation>Was zu probieren ist</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>In the profile, switch between heights above the level surface and heights from the straight line. It is one survey, seen by the water and seen by the light. Choose the axis Cedar there and switch on 'Line': one station stands to the left of its neighbours.</source>
   <translation>Im Längsschnitt zwischen Höhen über der Niveaufläche und Höhen gegenüber der Geraden wechseln. Es ist eine Messung, gesehen vom Wasser und gesehen vom Licht. Dort die Achse Cedar wählen und 'Linie' einschalten: Eine Station liegt links von ihren Nachbarn.</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>Run Design heights and residuals again with the Earth model 'flat', under its advanced parameters. The far end of Alder is then out by 0.52 m, though nobody built it wrong: such a drawing ignores curvature.</source>
   <translation>Soll-Höhen und Abweichungen mit dem Erdmodell 'flat' unter den erweiterten Parametern erneut ausführen. Das ferne Ende von Alder liegt dann um 0,52 m daneben, obwohl niemand es falsch gebaut hat: Eine solche Zeichnung vernachlässigt die Erdkrümmung.</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>Start the guided run: it asks four questions and says what it understood of your own data.</source>
   <translation>Den geführten Lauf starten: Er stellt vier Fragen und sagt, was er von den eigenen Daten verstanden hat.</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>Results are for review. Field work follows local codes, and a licensed surveyor or engineer decides.</source>
   <translation>Die Ergebnisse dienen der Prüfung. Für Arbeiten vor Ort gelten die örtlichen Vorschriften, und es entscheidet eine zugelassene Fachperson für Vermessung oder Ingenieurwesen.</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>Read me first</source>
   <translation>Zuerst lesen</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>Run it again…</source>
   <translation>Erneut ausführen…</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>Guided run</source>
   <translation>Geführter Lauf</translation>
  </message>
  <message>
   <location filename="../../plugin/example_guide.py" />
   <source>The form of Design heights and residuals, filled in for the example.</source>
   <translation>Das Formular von Soll-Höhen und Abweichungen, für das Beispiel ausgefüllt.</translation>
  </message>
  <message>
   <location filename="../../plugin/follow_up_forms.py" />
   <source>Review &amp;report…</source>
   <translation>Prüf&amp;bericht…</translation>
  </message>
  <message>
   <location filename="../../plugin/follow_up_forms.py" />
   <source>Adjustment &amp;schedule…</source>
   <translation>&amp;Korrekturplan…</translation>
  </message>
  <message>
   <location filename="../../plugin/follow_up_forms.py" />
   <source>&amp;Compare with another survey…</source>
   <translation>Mit anderer Messung &amp;vergleichen…</translation>
  </message>
  <message>
   <location filename="../../plugin/follow_up_forms.py" />
   <source>&amp;Draw deviations…</source>
   <translation>&amp;Abweichungen darstellen…</translation>
  </message>
  <message>
   <location filename="../../plugin/follow_up_forms.py" />
   <source>One s&amp;lide…</source>
   <translation>Eine Vortrags&amp;folie…</translation>
  </message>
  <message>
   <location filename="../../plugin/follow_up_forms.py" />
   <source>Axis layer '{}' has a field 'design': what it states for {} takes precedence over the chord in the form. Clear it there, or use an axis without it.</source>
   <translation>Der Achslayer '{}' hat ein Feld 'design': Was es für {} angibt, hat Vorrang vor der Sehne im Formular. Das Feld dort leeren oder eine Achse ohne es verwenden.</translation>
  </message>
  <message>
   <location filename="../../plugin/follow_up_forms.py" />
   <source>axis '{}'</source>
   <translation>Achse '{}'</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Where does it run?</source>
   <translation>Wo verläuft es?</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Along a line layer</source>
   <translation>Entlang eines Linienlayers</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>From the first to the last station</source>
   <translation>Von der ersten zur letzten Station</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Where there is no line layer: points with heights are enough, and a line layer is made from them.</source>
   <translation>Wo es keinen Linienlayer gibt: Punkte mit Höhen genügen, daraus wird ein Linienlayer gemacht.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Axis layer</source>
   <translation>Achslayer</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Line of the structure in plan, one line for each axis, drawn in the direction of rising chainage.</source>
   <translation>Linie des Bauwerks im Grundriss, eine je Achse, in Richtung steigender Stationierung gezeichnet.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Where are the surveyed heights, and what are they measured from?</source>
   <translation>Wo sind die gemessenen Höhen, und worauf beziehen sie sich?</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Open a file…</source>
   <translation>Datei öffnen…</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>A height list as CSV file or spreadsheet, or a layer with points.</source>
   <translation>Eine Höhenliste als CSV-Datei oder Tabellenkalkulation oder ein Layer mit Punkten.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Heights from</source>
   <translation>Höhen aus</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>A height list with a station and a height in each row, or points with heights.</source>
   <translation>Eine Höhenliste mit Station und Höhe in jeder Zeile oder Punkte mit Höhen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Type or paste…</source>
   <translation>Eintippen oder einfügen…</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>For heights read off drawings: a small table, checked line by line.</source>
   <translation>Für Höhen, die aus Zeichnungen abgelesen sind: eine kleine Tabelle, Zeile für Zeile geprüft.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>the same unit</source>
   <translation>dieselbe Einheit</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>above sea level, nothing more known</source>
   <translation>über dem Meer, sonst nichts bekannt</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>above sea level, undulations in a column</source>
   <translation>über dem Meer, Undulationen in einer Spalte</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>above sea level, undulations by EGM96</source>
   <translation>über dem Meer, Undulationen aus EGM96</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>above sea level, one undulation for all</source>
   <translation>über dem Meer, eine Undulation für alle</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>above the ellipsoid, as GNSS gives them</source>
   <translation>über dem Ellipsoid, wie GNSS sie gibt</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Column with the station, 12+50 or 1+250, or a distance.</source>
   <translation>Spalte mit der Station, 12+50 oder 1+250, oder einer Entfernung.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Column with the as-built height. Empty: the Z of the points.</source>
   <translation>Spalte mit der Ist-Höhe. Leer: das Z der Punkte.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Distance from the axis, right positive. Empty: on the axis.</source>
   <translation>Abstand von der Achse, rechts positiv. Leer: auf der Achse.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Name of the axis</source>
   <translation>Name der Achse</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Column that says which axis a row belongs to. Points without one belong to the nearest axis.</source>
   <translation>Spalte, die sagt, zu welcher Achse eine Zeile gehört. Punkte ohne Angabe gehören zur nächsten Achse.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Heights are in</source>
   <translation>Höhen in</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Tolerance and results are in this unit too.</source>
   <translation>Auch Toleranz und Ergebnisse stehen in dieser Einheit.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Distances are in</source>
   <translation>Stationen in</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Stations and offsets.</source>
   <translation>Stationen und Querabstände.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Heights are</source>
   <translation>Höhen sind</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>What they are measured from. The undulation is the height of the geoid, that is of mean sea level, above the ellipsoid.</source>
   <translation>Worauf sie sich beziehen. Die Undulation ist die Höhe des Geoids, also des mittleren Meeresspiegels, über dem Ellipsoid.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Column with the undulation of each station, in the unit of heights.</source>
   <translation>Spalte mit der Undulation jeder Station, in der Höheneinheit.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>One undulation for all stations, in the unit of heights.</source>
   <translation>Eine Undulation für alle Stationen, in der Höheneinheit.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Height lists and layers (*.csv *.txt *.xlsx *.ods *.gpkg *.shp *.geojson)</source>
   <translation>Höhenlisten und Layer (*.csv *.txt *.xlsx *.ods *.gpkg *.shp *.geojson)</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>All files (*)</source>
   <translation>Alle Dateien (*)</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>Height list or points</source>
   <translation>Höhenliste oder Punkte</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/data_questions.py" />
   <source>The file '{}' cannot be read as a table or layer.</source>
   <translation>Die Datei '{}' lässt sich nicht als Tabelle oder Layer lesen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Chord</source>
   <translation>Sehne</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Straight in space through two stations. Between them it lies below the level surface.</source>
   <translation>Gerade im Raum durch zwei Stationen. Dazwischen liegt sie unter der Niveaufläche.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Tangent</source>
   <translation>Tangente</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Straight in space and level at one station. It rises above the level surface on both sides.</source>
   <translation>Gerade im Raum und horizontal an einer Station. Sie steigt nach beiden Seiten über die Niveaufläche.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Inclined</source>
   <translation>Geneigt</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Straight in space with a slope given at one station.</source>
   <translation>Gerade im Raum mit einer Neigung, die an einer Station gegeben ist.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Fitted reference</source>
   <translation>Eingepasster Bezug</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>In a line or plane that was fitted or fixed before, kept in a layer.</source>
   <translation>In einer Geraden oder Ebene, die zuvor eingepasst oder festgelegt wurde und in einem Layer steht.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Level</source>
   <translation>Niveau</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>One height above the sea all along: it follows the Earth's curve, as water does.</source>
   <translation>Durchweg eine Höhe über dem Meer: Es folgt der Erdkrümmung, wie Wasser.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Grade</source>
   <translation>Neigung</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>A constant slope above the level surface, as for rails, roads and pipes.</source>
   <translation>Eine konstante Neigung über der Niveaufläche, wie bei Gleisen, Straßen und Rohren.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>What was it meant to be? The solid line is the structure, the dash-dotted one the level surface.</source>
   <translation>Was sollte es werden? Die durchgezogene Linie ist das Bauwerk, die strichpunktierte die Niveaufläche.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Station 12+50 or 1+250, or a distance.</source>
   <translation>Station 12+50 oder 1+250 oder eine Entfernung.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Design height there, in the unit of heights.</source>
   <translation>Soll-Höhe dort, in der Höheneinheit.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Reference layer</source>
   <translation>Bezugslayer</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Made by 'Fit a straight line or plane'; its row names the axis or is the only one.</source>
   <translation>Aus 'Gerade oder Ebene einpassen'; seine Zeile nennt die Achse oder ist die einzige.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Station A</source>
   <translation>Station A</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Height at A</source>
   <translation>Höhe bei A</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Station B</source>
   <translation>Station B</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Height at B</source>
   <translation>Höhe bei B</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Rise per distance without a unit: 0.003 is 3 mm per metre.</source>
   <translation>Anstieg je Entfernung ohne Einheit: 0.003 sind 3 mm je Meter.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Fields left empty are found from the stations, as shown in them.</source>
   <translation>Leere Felder werden aus den Stationen bestimmt, wie darin gezeigt.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>needed</source>
   <translation>nötig</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>from A to B</source>
   <translation>von A nach B</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>first of each axis</source>
   <translation>erste jeder Achse</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>middle of each axis</source>
   <translation>Mitte jeder Achse</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>last of each axis</source>
   <translation>letzte jeder Achse</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>through both ends</source>
   <translation>durch beide Enden</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>the best fit</source>
   <translation>die ausgleichende</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Accuracy</source>
   <translation>Genauigkeit</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>How accurate must it be, and how accurately was it measured?</source>
   <translation>Wie genau muss es sein, und wie genau wurde gemessen?</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>from the data</source>
   <translation>aus den Daten</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Greatest residual that counts as within, in the unit of heights.</source>
   <translation>Größte Abweichung, die noch als innerhalb zählt, in der Höheneinheit.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Accuracy of a height</source>
   <translation>Genauigkeit einer Höhe</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Standard deviation of one height, in the unit of heights. The fit and the test of the shape use it. Empty: a column 'sd', else estimated from the residuals.</source>
   <translation>Standardabweichung einer Höhe, in der Höheneinheit. Der Ausgleich und der Test der Form verwenden sie. Leer: eine Spalte 'sd', sonst aus den Abweichungen geschätzt.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Whether the stations are in line too, by their positions. An axis drawn by hand is no basis for judging.</source>
   <translation>Ob die Stationen auch in der Flucht liegen, nach ihren Lagen. Nach einer von Hand gezeichneten Achse lässt sich nichts beurteilen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Greatest distance from the line that counts as within, in the unit of heights.</source>
   <translation>Größter Abstand von der Linie, der noch als innerhalb zählt, in der Höheneinheit.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Keep the results in</source>
   <translation>Ergebnisse in</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>A GeoPackage. Empty: temporary layers, which are lost when the program closes.</source>
   <translation>Ein GeoPackage. Leer: temporäre Layer, die beim Schließen des Programms verloren gehen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Design heights and residuals are computed in any case. Also:</source>
   <translation>Soll-Höhen und Abweichungen werden immer berechnet. Außerdem:</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Fit a straight line or plane, look for blunders</source>
   <translation>Gerade oder Ebene einpassen, grobe Fehler suchen</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Draw the deviations on the map</source>
   <translation>Abweichungen in der Karte darstellen</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>from the axis layer</source>
   <translation>aus dem Achslayer</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>The axes meet: do they share one plane? Otherwise a line is fitted to each alone.</source>
   <translation>Die Achsen treffen sich: Liegen sie in einer gemeinsamen Ebene? Sonst wird jede für sich eingepasst.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>The axes do not all meet, so a line is fitted to each alone.</source>
   <translation>Die Achsen treffen sich nicht alle, deshalb wird jede für sich eingepasst.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>They share one plane</source>
   <translation>Eine gemeinsame Ebene</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>They share one plane all the same</source>
   <translation>Trotzdem eine gemeinsame Ebene</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Tolerance ({})</source>
   <translation>Toleranz ({})</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Accuracy of a height ({})</source>
   <translation>Genauigkeit einer Höhe ({})</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/design_questions.py" />
   <source>Tolerance of the line ({})</source>
   <translation>Toleranz der Linie ({})</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/drawn_axis.py" />
   <source>Drawn axis</source>
   <translation>Gezeichnete Achse</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/drawn_axis.py" />
   <source>The layer '{}' could not be written into '{}': {}</source>
   <translation>Der Layer '{}' ließ sich nicht in '{}' schreiben: {}</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/kept_edits.py" />
   <source>The placed stations were edited by hand since they were placed.</source>
   <translation>Die verorteten Stationen wurden seit dem Verorten von Hand bearbeitet.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/kept_edits.py" />
   <source>Placing the list again would undo these edits in {}, table '{}'. Kept, the run takes them as they are.</source>
   <translation>Erneutes Verorten der Liste würde diese Änderungen in {}, Tabelle '{}', verwerfen. Bleiben sie, nimmt der Lauf sie, wie sie sind.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/kept_edits.py" />
   <source>Keep my edits</source>
   <translation>Änderungen behalten</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/kept_edits.py" />
   <source>Place again</source>
   <translation>Neu verorten</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/needed.py" />
   <source>To run, choose the axis layer or have the axis drawn.</source>
   <translation>Für den Lauf den Achslayer wählen oder die Achse zeichnen lassen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/needed.py" />
   <source>To run, choose the heights.</source>
   <translation>Für den Lauf die Höhen wählen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/needed.py" />
   <source>Looking at the data…</source>
   <translation>Daten werden angesehen…</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/needed.py" />
   <source>To run, put right what is marked at {}.</source>
   <translation>Für den Lauf berichtigen, was markiert ist bei {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/needed.py" />
   <source>To run, put right what is marked under ‘{}’.</source>
   <translation>Für den Lauf berichtigen, was unter „{}“ markiert ist.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/needed.py" />
   <source>To run, give {}.</source>
   <translation>Für den Lauf angeben: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/panel.py" />
   <source>temporary layers</source>
   <translation>temporäre Layer</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/panel.py" />
   <source>Choose the file</source>
   <translation>Datei wählen</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/panel.py" />
   <source>Result</source>
   <translation>Ergebnis</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/panel.py" />
   <source>The answers below have changed since: run again to bring it up to date.</source>
   <translation>Die Antworten unten haben sich seither geändert: erneut ausführen, um es auf Stand zu bringen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/panel.py" />
   <source>The results were brought up to date since this run: see axis profile, flagged stations and report.</source>
   <translation>Die Ergebnisse wurden seit diesem Lauf auf Stand gebracht: siehe Achslängsschnitt, markierte Stationen und Bericht.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/panel.py" />
   <source>Run</source>
   <translation>Ausführen</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/panel.py" />
   <source>Cancel</source>
   <translation>Abbrechen</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/panel.py" />
   <source>Open the profile</source>
   <translation>Längsschnitt öffnen</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/panel.py" />
   <source>Reports</source>
   <translation>Berichte</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/panel.py" />
   <source>Report, schedule and comparison of the result: opens their forms.</source>
   <translation>Bericht, Korrekturplan und Vergleich zum Ergebnis: öffnet die Formulare.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/panel.py" />
   <source>Ready to run.</source>
   <translation>Bereit zum Ausführen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/panel.py" />
   <source>Guided run: {}</source>
   <translation>Geführter Lauf: {}</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/panel.py" />
   <source>Stopping…</source>
   <translation>Wird angehalten…</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/report.py" />
   <source>No station has a residual; the design heights are computed.</source>
   <translation>Keine Station hat eine Abweichung; die Soll-Höhen sind berechnet.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/report.py" />
   <source>{} of {} within the tolerance, greatest residual {}; the report judges them.</source>
   <translation>{} von {} innerhalb der Toleranz, größte Abweichung {}; das Urteil gibt der Bericht.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/running.py" />
   <source>Waiting for another run to end</source>
   <translation>Wartet auf das Ende eines anderen Laufs</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/running.py" />
   <source>There is no folder '{}' for OUTPUT.</source>
   <translation>Es gibt keinen Ordner '{}' für OUTPUT.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/running.py" />
   <source>The layer '{}' of an earlier run is being edited; save or discard its changes first.</source>
   <translation>Der Layer '{}' eines früheren Laufs wird gerade bearbeitet; seine Änderungen zuerst speichern oder verwerfen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/running.py" />
   <source>Placing the height list</source>
   <translation>Verorten der Höhenliste</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/running.py" />
   <source>Comparing with the design</source>
   <translation>Vergleich mit dem Entwurf</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/running.py" />
   <source>Fitting</source>
   <translation>Ausgleich</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/running.py" />
   <source>Testing the shape</source>
   <translation>Test der Form</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/running.py" />
   <source>Drawing the deviations</source>
   <translation>Darstellen der Abweichungen</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/running.py" />
   <source>{} failed: {}</source>
   <translation>{} fehlgeschlagen: {}</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/running.py" />
   <source>Cancelled. Done before that, and written: {}.</source>
   <translation>Abgebrochen. Davor erledigt und geschrieben: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>The rows are checked once the structure is known.</source>
   <translation>Die Zeilen werden geprüft, sobald das Bauwerk bekannt ist.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>{}; they are checked once the structure is known.</source>
   <translation>{}; geprüft wird, sobald das Bauwerk bekannt ist.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>The layer has {} lines. Is it the structure? Each line counts as an axis.</source>
   <translation>Der Layer hat {} Linien. Ist er das Bauwerk? Jede Linie zählt als Achse.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>{}, {}</source>
   <translation>{}, {}</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>{} ({})</source>
   <translation>{} ({})</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>The axis layer states the design itself</source>
   <translation>Der Achslayer gibt den Entwurf selbst an</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>The axis layer states the design of {} of {} axes itself</source>
   <translation>Der Achslayer gibt den Entwurf für {} von {} Achsen selbst an</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>{} ({}), with its controls and its tolerance where they are filled in. That takes precedence over the answers here.</source>
   <translation>{} ({}), mit Zwangspunkten und Toleranz, wo sie ausgefüllt sind. Das hat Vorrang vor den Antworten hier.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>{} on {}, heights from {} to {}.</source>
   <translation>{} auf {}, Höhen von {} bis {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>{} on {}, none with a height.</source>
   <translation>{} auf {}, keine mit Höhe.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>{} more axes.</source>
   <translation>Weitere Achsen: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>{}: </source>
   <translation>{}: </translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>{} from {} to {}</source>
   <translation>{} von {} bis {}</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>From {} to {}</source>
   <translation>Von {} bis {}</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>, usually every {}</source>
   <translation>, meist alle {}</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>no height at {}</source>
   <translation>keine Höhe bei {}</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>gap</source>
   <translation>Lücke</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>gaps</source>
   <translation>Lücken</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>{} between stations: {}</source>
   <translation>{} zwischen Stationen: {}</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>there more than once, all kept: {}</source>
   <translation>mehrfach vorhanden, alle behalten: {}</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>heights that do not fit the others: {}</source>
   <translation>Höhen, die nicht zu den anderen passen: {}</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>Too few heights to suggest a shape.</source>
   <translation>Zu wenige Höhen, um eine Form anzudeuten.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>Heights vary by {} over {}</source>
   <translation>Die Höhen unterscheiden sich um {} auf {}</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>, as those of a straight line would.</source>
   <translation>, wie bei einer Geraden.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>, along the level surface, as water would.</source>
   <translation>, entlang der Niveaufläche, wie bei Wasser.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>; too short or too rough to tell straight from level.</source>
   <translation>; zu kurz oder zu rau, um gerade von niveaugleich zu unterscheiden.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source> and bend {} times as much as a straight line would, neither straight nor level.</source>
   <translation> und krümmen sich {}-mal so stark wie bei einer Geraden, weder gerade noch niveaugleich.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source> and bend {} times as much as a straight line would. Are they in feet?</source>
   <translation> und krümmen sich {}-mal so stark wie bei einer Geraden. Sind sie in Fuß?</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>row {}: {}</source>
   <translation>Zeile {}: {}</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>{} cannot be placed: {}.</source>
   <translation>{} nicht zu verorten: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>feet</source>
   <translation>Fuß</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/sentences.py" />
   <source>The stations run over {} of an axis of {}: they may be in {}.</source>
   <translation>Die Stationen reichen über {} einer Achse von {}: Ihre Einheit ist vielleicht {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>Height list, typed or pasted</source>
   <translation>Höhenliste, eingetippt oder eingefügt</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>Heights are &amp;in</source>
   <translation>Höhen &amp;in</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>Stations and o&amp;ffsets are in</source>
   <translation>Stationen und &amp;Querabstände in</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>Pas&amp;te</source>
   <translation>Ein&amp;fügen</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>&amp;Copy</source>
   <translation>&amp;Kopieren</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>In&amp;sert a row</source>
   <translation>&amp;Zeile einfügen</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>&amp;Delete rows</source>
   <translation>Zeilen &amp;löschen</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>&amp;Undo</source>
   <translation>Rückgän&amp;gig</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>&amp;Redo</source>
   <translation>&amp;Wiederholen</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>Second t&amp;yping…</source>
   <translation>Zweite &amp;Eingabe…</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>Type the same sheets once more without seeing the first, and compare.</source>
   <translation>Dieselben Blätter noch einmal eintippen, ohne die erste Eingabe zu sehen, und vergleichen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>&amp;Back to the first typing</source>
   <translation>Zurück zur e&amp;rsten Eingabe</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>Co&amp;mpare</source>
   <translation>&amp;Vergleichen</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>&amp;Apply the choices</source>
   <translation>&amp;Auswahl übernehmen</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>&amp;Keep the list</source>
   <translation>Liste &amp;behalten</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>Look at the sheet and choose for each difference: Space or Enter on the first or the second typing, or type a third value. Remarks are not compared.</source>
   <translation>Im Blatt nachsehen und für jeden Unterschied wählen: Leertaste oder Enter auf der ersten oder zweiten Eingabe, oder einen dritten Wert eintippen. Bemerkungen werden nicht verglichen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>Second typing: the first is not shown. </source>
   <translation>Zweite Eingabe: Die erste ist nicht zu sehen. </translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>Stations such as 12+50, 1+250 or a distance; offsets right positive. Enter goes from the station to the height and from there to the next row, Tab to the next cell. A pasted table may have headings.</source>
   <translation>Stationen wie 12+50, 1+250 oder eine Entfernung; Querabstände rechts positiv. Enter geht von der Station zur Höhe und von dort in die nächste Zeile, Tab in die nächste Zelle. Eine eingefügte Tabelle darf eine Kopfzeile haben.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>Row {}: {}</source>
   <translation>Zeile {}: {}</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>Kept as a table in {}.</source>
   <translation>Steht als Tabelle in {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>The guided run has no GeoPackage yet: the list becomes a temporary layer, lost on closing.</source>
   <translation>Der geführte Lauf hat noch kein GeoPackage: Die Liste wird ein temporärer Layer, der beim Schließen verloren geht.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>row agrees.</source>
   <translation>Zeile stimmt überein.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>rows agree.</source>
   <translation>Zeilen stimmen überein.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>difference</source>
   <translation>Unterschied</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>differences</source>
   <translation>Unterschiede</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>{}, {} still without a choice.</source>
   <translation>{}, davon {} noch ohne Auswahl.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>{}, each with its choice.</source>
   <translation>{}, nichts mehr offen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>Each difference needs a choice first.</source>
   <translation>Zuerst bei jedem Unterschied auswählen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>The pasted text cannot be split into cells: {}.</source>
   <translation>Der eingefügte Text lässt sich nicht in Zellen teilen: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>There is no text to paste.</source>
   <translation>Es gibt keinen Text zum Einfügen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>The unit is taken from the headings; see above the table.</source>
   <translation>Die Einheit stammt aus der Kopfzeile; siehe über der Tabelle.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>There is no first typing to compare with yet.</source>
   <translation>Es gibt noch keine erste Eingabe zum Vergleichen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>The two typings are one list now.</source>
   <translation>Die beiden Eingaben sind jetzt eine Liste.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>There is no row with a reading to keep.</source>
   <translation>Es gibt keine Zeile mit einer Ablesung zum Behalten.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list.py" />
   <source>Discard what was typed since the list was opened?</source>
   <translation>Verwerfen, was seit dem Öffnen der Liste eingetippt wurde?</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>No height: placed without one.</source>
   <translation>Keine Höhe: wird ohne verortet.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>{} {} from the row above; usual is {} {}.</source>
   <translation>{} {} zur Zeile darüber; üblich sind {} {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>The station is out of order.</source>
   <translation>Die Station ist außer der Reihe.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>The same station as in row {}.</source>
   <translation>Dieselbe Station wie in Zeile {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>above</source>
   <translation>über</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>below</source>
   <translation>unter</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>{} {} {} the line of its neighbours.</source>
   <translation>{} {} {} der Linie der Nachbarn.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>Digits exchanged? {} {} would fit the neighbours.</source>
   <translation>Ziffern vertauscht? {} {} würden zu den Nachbarn passen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>Decimal point slipped? {} {} would fit the neighbours.</source>
   <translation>Komma verrutscht? {} {} würden zu den Nachbarn passen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>Read in another unit? {} {} would fit the neighbours.</source>
   <translation>In anderer Einheit gelesen? {} {} würden zu den Nachbarn passen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>One height with a further decimal shows which it is.</source>
   <translation>Eine Höhe mit einer weiteren Dezimalstelle zeigt, was gemeint ist.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>No row yet: type a station and a height, or paste a table.</source>
   <translation>Noch keine Zeile: eine Station und eine Höhe eintippen oder eine Tabelle einfügen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>row cannot be placed</source>
   <translation>Zeile nicht zu verorten</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>rows cannot be placed</source>
   <translation>Zeilen nicht zu verorten</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>{}: see the column Check.</source>
   <translation>{}: siehe Spalte 'Prüfung'.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>row with a doubt</source>
   <translation>Zeile mit Zweifel</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>rows with doubts</source>
   <translation>Zeilen mit Zweifel</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>{}: compare with the drawing. The list can be used as it is.</source>
   <translation>{}: mit der Zeichnung vergleichen. Die Liste ist so verwendbar.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>No doubts.</source>
   <translation>Keine Zweifel.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>The heading '{}' is in {}, but lists are read in metres or feet; nothing was pasted.</source>
   <translation>Die Kopfzeile '{}' nennt {}, aber Listen werden nur in Metern oder Fuß gelesen; es wurde nichts eingefügt.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>Columns by their headings, {}.</source>
   <translation>Spalten nach der Kopfzeile, {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>{} above the headings left out.</source>
   <translation>Über der Kopfzeile weggelassen: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_checks.py" />
   <source>Columns without a place here, left out: {}.</source>
   <translation>Spalten ohne Platz hier, weggelassen: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_layer.py" />
   <source>Typed list</source>
   <translation>Eingetippte Liste</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_layer.py" />
   <source>There is no folder '{}' for the list.</source>
   <translation>Es gibt keinen Ordner '{}' für die Liste.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_layer.py" />
   <source>Row {}: the text is longer than the {} letters of its column.</source>
   <translation>Zeile {}: Der Text ist länger als die {} Zeichen der Spalte.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_layer.py" />
   <source>The layer '{}' is being edited; save or discard its changes first.</source>
   <translation>Der Layer '{}' wird gerade bearbeitet; seine Änderungen zuerst speichern oder verwerfen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_layer.py" />
   <source>The layer '{}' cannot be edited.</source>
   <translation>Der Layer '{}' lässt sich nicht bearbeiten.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_layer.py" />
   <source>The list could not be written into layer '{}': {}</source>
   <translation>Die Liste ließ sich nicht in den Layer '{}' schreiben: {}</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_model.py" />
   <source>Check</source>
   <translation>Prüfung</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_second.py" />
   <source>whole row</source>
   <translation>ganze Zeile</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_second.py" />
   <source>What</source>
   <translation>Was</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_second.py" />
   <source>First typing</source>
   <translation>Erste Eingabe</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_second.py" />
   <source>Second typing</source>
   <translation>Zweite Eingabe</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_second.py" />
   <source>Third value</source>
   <translation>Dritter Wert</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_second.py" />
   <source>no such row</source>
   <translation>keine solche Zeile</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_second.py" />
   <source>empty</source>
   <translation>leer</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/typed_list_second.py" />
   <source>Differences between the two typings</source>
   <translation>Unterschiede zwischen den beiden Eingaben</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/understanding.py" />
   <source>Choose a layer or open a file: a height list, or points with heights.</source>
   <translation>Einen Layer wählen oder eine Datei öffnen: eine Höhenliste oder Punkte mit Höhen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/understanding.py" />
   <source>Choose the line layer of the structure, or have the axis drawn.</source>
   <translation>Den Linienlayer des Bauwerks wählen oder die Achse zeichnen lassen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/understanding.py" />
   <source>A list has no places to draw an axis between; choose the line layer of the structure, or points instead of the list.</source>
   <translation>Eine Liste hat keine Orte, zwischen denen sich eine Achse zeichnen ließe; den Linienlayer des Bauwerks wählen oder Punkte statt der Liste.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/understanding.py" />
   <source>Looking at the stations</source>
   <translation>Stationen werden angesehen</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/understanding.py" />
   <source>Looking at the heights</source>
   <translation>Höhen werden angesehen</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/understanding.py" />
   <source>No station has a height; choose the column with the heights.</source>
   <translation>Keine Station hat eine Höhe; die Spalte mit den Höhen wählen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Give heights, then run again.</source>
   <translation>Höhen angeben, dann erneut ausführen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Give a tolerance to have them judged.</source>
   <translation>Eine Toleranz angeben, damit sie beurteilt werden.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Open the profile, then decide on each of the flagged stations.</source>
   <translation>Den Längsschnitt öffnen, dann über jede markierte Station entscheiden.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Measure those near the limit more accurately before anything is decided.</source>
   <translation>Die nahe der Grenze genauer messen, bevor etwas entschieden wird.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Have the doubted stations read again, then run again.</source>
   <translation>Die angezweifelten Stationen neu ablesen lassen, dann erneut ausführen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Nothing, unless a decision is changed.</source>
   <translation>Nichts, solange keine Entscheidung geändert wird.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Measure those near the limit more accurately, or state the accuracy of the heights.</source>
   <translation>Die nahe der Grenze genauer messen oder die Genauigkeit der Höhen angeben.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Nothing; the report is under ‘Reports’.</source>
   <translation>Nichts; der Bericht steht unter „Berichte“.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Look there in the profile; compare with an earlier survey.</source>
   <translation>Dort im Längsschnitt nachsehen; mit einer früheren Messung vergleichen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Give a tolerance of the line to have it judged.</source>
   <translation>Eine Toleranz der Linie angeben, damit sie beurteilt wird.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Open the profile and switch ‘Line’ on, then decide on each of the flagged stations.</source>
   <translation>Den Längsschnitt öffnen und „Linie“ einschalten, dann über jede markierte Station entscheiden.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Have those near the limit set out again before anything is decided.</source>
   <translation>Die nahe der Grenze neu abstecken lassen, bevor etwas entschieden wird.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Have the doubted stations measured again, then run again.</source>
   <translation>Die angezweifelten Stationen nachmessen lassen, dann erneut ausführen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Have those near the limit measured more accurately.</source>
   <translation>Die nahe der Grenze genauer messen lassen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Nothing; the profile shows it with ‘Line’.</source>
   <translation>Nichts; der Längsschnitt zeigt es mit „Linie“.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>{} axes or legs are straight in space: {}.</source>
   <translation>{} Achsen oder Abschnitte sind gerade im Raum: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>{} axes or legs follow the level surface at a constant grade: {}.</source>
   <translation>{} Achsen oder Abschnitte folgen der Niveaufläche mit konstanter Neigung: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>{} axes or legs are neither straight in space nor at a constant grade: {}.</source>
   <translation>{} Achsen oder Abschnitte sind weder gerade im Raum noch von konstanter Neigung: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Whether {} axes or legs are straight or level is undecided: {}.</source>
   <translation>Ob {} Achsen oder Abschnitte gerade oder niveaugleich sind, ist unentschieden: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>{} axes or legs bend on average like a straight line, but do not follow one: {}.</source>
   <translation>{} Achsen oder Abschnitte krümmen sich im Mittel wie eine Gerade, folgen aber keiner: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>{} axes or legs follow the level surface on average, but not from station to station: {}.</source>
   <translation>{} Achsen oder Abschnitte folgen der Niveaufläche im Mittel, aber nicht von Station zu Station: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Check unit, height system and undulations; then look at the profile.</source>
   <translation>Einheit, Höhensystem und Undulationen prüfen; dann den Längsschnitt ansehen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Do not call it straight or level from these heights.</source>
   <translation>Nach diesen Höhen weder gerade noch niveaugleich nennen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Look in the profile where it departs; a stretch may have moved there.</source>
   <translation>Im Längsschnitt nachsehen, wo es abweicht; dort kann sich eine Strecke bewegt haben.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>The design chosen says otherwise: ask which of the two was meant.</source>
   <translation>Der gewählte Entwurf sagt anderes: fragen, welches von beiden gemeint war.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Nothing; the design chosen is of this shape.</source>
   <translation>Nichts; der gewählte Entwurf hat diese Form.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>The heights are rougher than stated, or the shape is another: check the accuracy stated, then what is named below.</source>
   <translation>Die Höhen sind ungenauer als angegeben, oder die Form ist eine andere: die angegebene Genauigkeit prüfen, dann das unten Genannte.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>The heights agree better than stated: check the accuracy stated.</source>
   <translation>Die Höhen stimmen besser überein als angegeben: die angegebene Genauigkeit prüfen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Nothing; later surveys can be compared with the reference layer.</source>
   <translation>Nichts; spätere Messungen lassen sich mit dem Bezugslayer vergleichen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>The global test failed in {} fits, above its limit: {}.</source>
   <translation>Der Globaltest ist in {} Ausgleichungen nicht bestanden, über seiner Grenze: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>The global test failed in {} fits, below its limit: {}.</source>
   <translation>Der Globaltest ist in {} Ausgleichungen nicht bestanden, unter seiner Grenze: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>{} fits pass the global test, or were not tested: {}.</source>
   <translation>{} Ausgleichungen bestehen den Globaltest oder wurden nicht getestet: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Have the shape tested before any single height is blamed.</source>
   <translation>Die Form testen lassen, bevor eine einzelne Höhe beschuldigt wird.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Look into the field book of that section.</source>
   <translation>Im Feldbuch dieser Nivellementstrecke nachsehen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Compare with an earlier survey, and have its first and last station read again.</source>
   <translation>Mit einer früheren Messung vergleichen und die erste und letzte Station der Strecke neu ablesen lassen.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>{} to {} of '{}'</source>
   <translation>{} bis {} auf '{}'</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>{} stretches seem to have moved, since neighbours lie off on the same side: {}.</source>
   <translation>{} Strecken scheinen sich bewegt zu haben, denn ihre Nachbarn weichen zur selben Seite ab: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>Have them read again; decide in ‘Flagged stations’. No reading is deleted.</source>
   <translation>Sie neu ablesen lassen; in „Markierte Stationen“ entscheiden. Keine Ablesung wird gelöscht.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>{} of '{}' ({})</source>
   <translation>{} auf '{}' ({})</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>'{}': {} suspected blunders: {}.</source>
   <translation>'{}': {} vermutete grobe Fehler: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/verdicts.py" />
   <source>No blunder is suspected in {} fits: {}.</source>
   <translation>Kein grober Fehler ist vermutet in {} Ausgleichungen: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/widgets.py" />
   <source>In order</source>
   <translation>In Ordnung</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/widgets.py" />
   <source>Doubtful</source>
   <translation>Zweifelhaft</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/widgets.py" />
   <source>Problem</source>
   <translation>Problem</translation>
  </message>
  <message>
   <location filename="../../plugin/guided/widgets.py" />
   <source>To do</source>
   <translation>Zu tun</translation>
  </message>
  <message>
   <location filename="../../plugin/main.py" />
   <source>Design heights and residuals…</source>
   <translation>Soll-Höhen und Abweichungen…</translation>
  </message>
  <message>
   <location filename="../../plugin/main.py" />
   <source>Axis profile</source>
   <translation>Achslängsschnitt</translation>
  </message>
  <message>
   <location filename="../../plugin/main.py" />
   <source>Guide</source>
   <translation>Anleitung</translation>
  </message>
  <message>
   <location filename="../../plugin/main.py" />
   <source>How it is computed</source>
   <translation>Wie gerechnet wird</translation>
  </message>
  <message>
   <location filename="../../plugin/main.py" />
   <source>Open its form…</source>
   <translation>Formular öffnen…</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/chart.py" />
   <source>Profile chart</source>
   <translation>Längsschnittdiagramm</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/chart.py" />
   <source>Left and right arrows step from station to station, Page Up and Page Down by ten, Home and End to the ends. Space selects the current station, with Ctrl or Shift one more. Enter zooms the map to it, plus and minus zoom the chart.</source>
   <translation>Die Pfeiltasten links und rechts gehen von Station zu Station, Bild auf und Bild ab um zehn, Pos1 und Ende an die Enden. Die Leertaste wählt die aktuelle Station, mit Strg oder Umschalt eine weitere. Die Eingabetaste zoomt die Karte auf sie, Plus und Minus zoomen das Diagramm.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/dock.py" />
   <source>(no name)</source>
   <translation>(ohne Namen)</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/dock.py" />
   <source>Layer '{}' has no station with a chainage.</source>
   <translation>Layer '{}' hat keine Station mit Stationierung.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/dock.py" />
   <source>There are no stations to show yet.

Run 'Design heights and residuals' from the toolbox, or open the example from the menu Plugins, Tautline. The layer with its results then appears here.</source>
   <translation>Es gibt noch keine Stationen zu zeigen.

'Soll-Höhen und Abweichungen' aus der Werkzeugkiste ausführen oder das Beispiel im Menü Erweiterungen, Tautline öffnen. Der Layer mit den Ergebnissen erscheint dann hier.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/dock.py" />
   <source>{} selected.</source>
   <translation>{} ausgewählt.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/dock.py" />
   <source>Point at a station to read it; click to select it, drag to select several, turn the wheel to zoom.</source>
   <translation>Auf eine Station zeigen, um sie zu lesen; Klick wählt sie aus, Ziehen wählt mehrere, das Mausrad zoomt.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/dock.py" />
   <source>Layer '{}'. For review; no setting-out data.</source>
   <translation>Layer '{}'. Zur Prüfung; keine Absteckdaten.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/dock.py" />
   <source>Save the chart</source>
   <translation>Diagramm speichern</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/dock.py" />
   <source>The chart could not be saved as {}: {}</source>
   <translation>Das Diagramm ließ sich nicht als {} speichern: {}</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/dock.py" />
   <source>The chart is saved as {}.</source>
   <translation>Das Diagramm ist gespeichert als {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/drawing.py" />
   <source>Height from the design ({})</source>
   <translation>Höhe gegenüber Soll ({})</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/drawing.py" />
   <source>Station on {}</source>
   <translation>Station auf {}</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/drawing.py" />
   <source>Heights are exaggerated {} times.</source>
   <translation>Höhen sind {}-fach überhöht.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/export.py" />
   <source>PNG picture</source>
   <translation>PNG-Bild</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/export.py" />
   <source>SVG drawing</source>
   <translation>SVG-Zeichnung</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/export.py" />
   <source>PDF page</source>
   <translation>PDF-Seite</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/export.py" />
   <source>'{}' ends in none of {}.</source>
   <translation>'{}' endet auf keines von {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/legend.py" />
   <source>As-built ± 1 standard deviation</source>
   <translation>Ist ± 1 Standardabweichung</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/legend.py" />
   <source>As-built</source>
   <translation>Ist</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/legend.py" />
   <source>Level surface</source>
   <translation>Niveaufläche</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/legend.py" />
   <source>Tolerance ± {}</source>
   <translation>Toleranz ± {}</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/legend.py" />
   <source>Too high</source>
   <translation>Zu hoch</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/legend.py" />
   <source>Too low</source>
   <translation>Zu tief</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/legend.py" />
   <source>Suspected by the test</source>
   <translation>Im Test auffällig</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/line_chart.py" />
   <source>Line, seen from above ({})</source>
   <translation>Linie, von oben gesehen ({})</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/line_chart.py" />
   <source>Beyond its tolerance ± {}</source>
   <translation>Jenseits ihrer Toleranz ± {}</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Heights above the level surface</source>
   <translation>Höhen über der Niveaufläche</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Heights from the straight line</source>
   <translation>Höhen gegenüber der Geraden</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>The same heights seen in two ways: with the level surface flat, or with the straight line flat.</source>
   <translation>Dieselben Höhen auf zwei Arten gesehen: mit der Niveaufläche als Ebene oder mit der Geraden als Ebene.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>View</source>
   <translation>Ansicht</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Layer</source>
   <translation>Layer</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>How many times larger heights are drawn than chainages.</source>
   <translation>Wievielmal größer Höhen gezeichnet sind als die Stationierung.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Show all</source>
   <translation>Alle zeigen</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Show all stations of the axis.</source>
   <translation>Alle Stationen der Achse zeigen.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Zoom map</source>
   <translation>Karte zoomen</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Zoom the map to the selected stations, or to all of this axis.</source>
   <translation>Die Karte auf die ausgewählten Stationen zoomen oder auf alle dieser Achse.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Ranges</source>
   <translation>Bereiche</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Type the ranges of the chart, and keep them.</source>
   <translation>Die Wertebereiche des Diagramms eingeben und beibehalten.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>What if</source>
   <translation>Was wäre wenn</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Try a straight line through two stations: click one, then the other; nothing is run or written. With Ctrl the very point of the chart is taken, Enter takes the current station, Esc leaves.</source>
   <translation>Eine Gerade durch zwei Stationen probieren: die eine anklicken, dann die andere; nichts wird ausgeführt oder geschrieben. Mit Strg gilt genau der Punkt des Diagramms, Enter nimmt die aktuelle Station, Esc beendet.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Show the lateral departures from the line as a third chart: left of it up, right of it down.</source>
   <translation>Als drittes Diagramm die Querabweichungen von der Linie zeigen: links davon nach oben, rechts davon nach unten.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Table</source>
   <translation>Tabelle</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Show the values as a table.</source>
   <translation>Die Werte als Tabelle zeigen.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Export</source>
   <translation>Export</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Save the chart as PNG, SVG or PDF, or copy it.</source>
   <translation>Das Diagramm als PNG, SVG oder PDF speichern oder kopieren.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Report, schedule and comparison of the stations shown: opens their forms.</source>
   <translation>Bericht, Korrekturplan und Vergleich zu den gezeigten Stationen: öffnet die Formulare.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Save as P&amp;NG…</source>
   <translation>Als P&amp;NG speichern…</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Save as &amp;SVG…</source>
   <translation>Als &amp;SVG speichern…</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Save as &amp;PDF…</source>
   <translation>Als &amp;PDF speichern…</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Save one s&amp;lide: map, profile and verdict…</source>
   <translation>Vortrags&amp;folie speichern: Karte, Längsschnitt und Ergebnis…</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>&amp;Copy the chart</source>
   <translation>&amp;Diagramm kopieren</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/panel.py" />
   <source>Copy the &amp;table</source>
   <translation>&amp;Tabelle kopieren</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/ranges_panel.py" />
   <source>Keep these ranges for every axis</source>
   <translation>Diese Bereiche für jede Achse beibehalten</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/ranges_panel.py" />
   <source>Charts of different axes and surveys can then be compared at one scale.</source>
   <translation>Diagramme verschiedener Achsen und Messungen lassen sich dann in einem Maßstab vergleichen.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/ranges_panel.py" />
   <source>to</source>
   <translation>bis</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/ranges_panel.py" />
   <source>Heights ({})</source>
   <translation>Höhen ({})</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/ranges_panel.py" />
   <source>Residuals ({})</source>
   <translation>Abweichungen ({})</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/ranges_panel.py" />
   <source>Line, + right ({})</source>
   <translation>Linie, + rechts ({})</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/ranges_panel.py" />
   <source>{}: from</source>
   <translation>{}: von</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/ranges_panel.py" />
   <source>{}: to</source>
   <translation>{}: bis</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/table.py" />
   <source>Test of blunders</source>
   <translation>Test auf grobe Fehler</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/table.py" />
   <source>Table of values</source>
   <translation>Wertetabelle</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/tried_line.py" />
   <source>What if: straight</source>
   <translation>Was wäre wenn: Gerade</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/tried_line.py" />
   <source>level through A</source>
   <translation>Niveau durch A</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/what_if.py" />
   <source>Use as design…</source>
   <translation>Als Entwurf nehmen…</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/what_if.py" />
   <source>Open the form of 'Design heights and residuals' with this line as its chord.</source>
   <translation>Das Formular von 'Soll-Höhen und Abweichungen' mit dieser Geraden als Sehne öffnen.</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/what_if.py" />
   <source>Leave</source>
   <translation>Beenden</translation>
  </message>
  <message>
   <location filename="../../plugin/profile/what_if.py" />
   <source>Take the line away (Esc).</source>
   <translation>Die Gerade wegnehmen (Esc).</translation>
  </message>
  <message>
   <location filename="../../plugin/provider.py" />
   <source>Tautline: long structures and the Earth's curvature</source>
   <translation>Tautline: lange Bauwerke und die Erdkrümmung</translation>
  </message>
  <message>
   <location filename="../../plugin/review/bring_up_to_date.py" />
   <source>Bring up to date</source>
   <translation>Auf Stand bringen</translation>
  </message>
  <message>
   <location filename="../../plugin/review/bring_up_to_date.py" />
   <source>Layer '{}' was edited by hand and is kept as it is; its step was not run.</source>
   <translation>Layer '{}' wurde von Hand bearbeitet und bleibt, wie er ist; sein Schritt wurde nicht ausgeführt.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/bring_up_to_date.py" />
   <source>'{}' runs again.</source>
   <translation>'{}' läuft erneut.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/bring_up_to_date.py" />
   <source>'{}' could not be run: {}</source>
   <translation>'{}' ließ sich nicht ausführen: {}</translation>
  </message>
  <message>
   <location filename="../../plugin/review/bring_up_to_date.py" />
   <source>What follows was not run: {}.</source>
   <translation>Was darauf folgt, wurde nicht ausgeführt: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/bring_up_to_date.py" />
   <source>Brought up to date: {}.</source>
   <translation>Auf Stand gebracht: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/docks.py" />
   <source>The profile needs matplotlib in QGIS's own Python: {}</source>
   <translation>Der Längsschnitt braucht matplotlib im Python von QGIS: {}</translation>
  </message>
  <message>
   <location filename="../../plugin/review/run_again.py" />
   <source>Layer '{}' carries no record of the run that made it.</source>
   <translation>Layer '{}' enthält kein Protokoll des Laufs, der ihn erzeugt hat.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/run_again.py" />
   <source>Layer '{}' was made by '{}', which is not a Tautline entry; only these are run again.</source>
   <translation>Layer '{}' wurde von '{}' erzeugt, das ist kein Werkzeug von Tautline; nur diese werden erneut ausgeführt.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/run_again.py" />
   <source>The layer of {} no longer exists: {}.</source>
   <translation>Der Layer für {} existiert nicht mehr: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/run_again.py" />
   <source>Layer '{}' does not record which output of its run it is; run that step from its form.</source>
   <translation>Im Layer '{}' ist nicht verzeichnet, welche Ausgabe seines Laufs er ist; diesen Schritt aus seinem Formular ausführen.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/run_again.py" />
   <source>Layer '{}' would be overwritten, but holds edits that are not saved.</source>
   <translation>Layer '{}' würde überschrieben, enthält aber ungespeicherte Änderungen.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/run_again.py" />
   <source>layer '{}', in memory</source>
   <translation>Layer '{}' im Arbeitsspeicher</translation>
  </message>
  <message>
   <location filename="../../plugin/review/run_again.py" />
   <source>'{}' runs with the settings that layer '{}' was made with.</source>
   <translation>'{}' läuft mit den Einstellungen, mit denen der Layer '{}' erzeugt wurde.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/run_again.py" />
   <source>It reads: {}.</source>
   <translation>Gelesen wird: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/run_again.py" />
   <source>no layer of this project</source>
   <translation>kein Layer dieses Projekts</translation>
  </message>
  <message>
   <location filename="../../plugin/review/run_again.py" />
   <source>It writes over:</source>
   <translation>Überschrieben wird:</translation>
  </message>
  <message>
   <location filename="../../plugin/review/run_again.py" />
   <source>Edited by hand since, which this undoes: {}.</source>
   <translation>Seither von Hand geändert, was hiermit verloren geht: {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/run_again.py" />
   <source>The edits of layer '{}' could not be saved: {}</source>
   <translation>Die Änderungen am Layer '{}' ließen sich nicht speichern: {}</translation>
  </message>
  <message>
   <location filename="../../plugin/review/stale_line.py" />
   <source>Runs the recorded steps again, in their order, from the first layer that changed.</source>
   <translation>Führt die aufgezeichneten Schritte erneut aus, in ihrer Reihenfolge, ab dem ersten geänderten Layer.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>This layer has no design heights: only the residuals are drawn.</source>
   <translation>Dieser Layer hat keine Soll-Höhen: Gezeichnet sind nur die Abweichungen.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>This design keeps to the level surface, level or at a constant grade, so it shows no curve against it.</source>
   <translation>Dieser Entwurf hält sich an die Niveaufläche, niveaugleich oder mit konstanter Neigung, und zeigt deshalb keine Krümmung gegen sie.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>The design lies flat here; the level surface leaves it by the design's grade alone.</source>
   <translation>Der Entwurf liegt hier flach; die Niveaufläche verlässt ihn allein durch seine Neigung.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>Seen along the straight design the line lies flat, and the level surface, where water would stand, is the curve.</source>
   <translation>Vom geraden Entwurf aus gesehen liegt die Linie flach, und die Niveaufläche, auf der Wasser stünde, ist die Kurve.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>Seen from the level surface, where water would stand, a straight design is a curve: at {} it lies {} {} the design with no curvature.</source>
   <translation>Von der Niveaufläche aus gesehen, auf der Wasser stünde, ist ein gerader Entwurf eine Kurve: Bei {} liegt er {} {} dem Entwurf ohne Erdkrümmung.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>Layer '{}' is shown as soon as the current run has ended.</source>
   <translation>Layer '{}' wird gezeigt, sobald der aktuelle Lauf beendet ist.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>Left of the line</source>
   <translation>Links der Linie</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>Right of the line</source>
   <translation>Rechts der Linie</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>Within now</source>
   <translation>Jetzt innerhalb</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>Stretch that moved</source>
   <translation>Bewegte Strecke</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>Not flagged now</source>
   <translation>Jetzt nicht markiert</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>within the tolerance</source>
   <translation>innerhalb der Toleranz</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>residual {}</source>
   <translation>Abweichung {}</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>in a stretch that moved</source>
   <translation>in einer bewegten Strecke</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>as-built {}</source>
   <translation>Ist {}</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>design {}</source>
   <translation>Soll {}</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>{} of the line, beyond its tolerance</source>
   <translation>{} der Linie, jenseits ihrer Toleranz</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>{} of the line, within its tolerance</source>
   <translation>{} der Linie, innerhalb ihrer Toleranz</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>on the line</source>
   <translation>auf der Linie</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>{} of the line</source>
   <translation>{} der Linie</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>What if, {}</source>
   <translation>Was wäre wenn, {}</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>straight line {} the line with no curvature (8-inch rule {})</source>
   <translation>Gerade {} der Linie ohne Erdkrümmung (8-Zoll-Regel {})</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>{} the level surface through A</source>
   <translation>{} der Niveaufläche durch A</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>as-built {} the straight line</source>
   <translation>Ist {} der Geraden</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>What if: nothing is written.</source>
   <translation>Was wäre wenn: Nichts wird geschrieben.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>Click the first station. Ctrl and a click take the very point of the chart.</source>
   <translation>Die erste Station anklicken. Strg und Klick nehmen genau den Punkt des Diagramms.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>A straight line from {}: click the second station.</source>
   <translation>Eine Gerade ab {}: die zweite Station anklicken.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>Straight from A {} to B {}. Farthest from the line with no curvature at {}: {} it, 8-inch rule {}.</source>
   <translation>Gerade von A {} nach B {}. Am weitesten von der Linie ohne Erdkrümmung bei {}: {} ihr, 8-Zoll-Regel {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/review/station_texts.py" />
   <source>The geoid's slope and bending are not known here.</source>
   <translation>Neigung und Krümmung des Geoids sind hier nicht bekannt.</translation>
  </message>
  <message>
   <location filename="../../plugin/slide.py" />
   <source>slide</source>
   <translation>Folie</translation>
  </message>
  <message>
   <location filename="../../plugin/slide.py" />
   <source>Save one slide</source>
   <translation>Vortragsfolie speichern</translation>
  </message>
  <message>
   <location filename="../../plugin/slide.py" />
   <source>The slide is saved as {}.</source>
   <translation>Die Folie ist gespeichert als {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/toolbox.py" />
   <source>The toolbox has no entry {}.</source>
   <translation>Die Werkzeugkiste hat kein Werkzeug {}.</translation>
  </message>
  <message>
   <location filename="../../plugin/toolbox.py" />
   <source>The run failed without saying why.</source>
   <translation>Der Lauf ist ohne Angabe eines Grundes fehlgeschlagen.</translation>
  </message>
 </context>
</TS>
