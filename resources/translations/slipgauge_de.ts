<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name></name>
    <message>
        <source>“{name}” is typed in a form that is not finished; add it or empty it first.</source>
        <translation>„{name}“ ist in einem Formular eingetippt, das nicht abgeschlossen ist; erst hinzufügen oder leeren.</translation>
    </message>
    <message>
        <source>No machine is named “{name}” here; pick one above.</source>
        <translation>Hier heißt keine Maschine „{name}“; oben eine wählen.</translation>
    </message>
    <message>
        <source>The copy is in place; the file that could not be opened is now {file}.</source>
        <translation>Die Sicherungskopie liegt an ihrem Platz; die Datei, die sich nicht öffnen ließ, heißt jetzt {file}.</translation>
    </message>
    <message>
        <source>Stopped; everything is as it was.</source>
        <translation>Angehalten; alles ist, wie es war.</translation>
    </message>
    <message>
        <source>A fault of this program: {name}. The details are on standard error.</source>
        <translation>Fehler in diesem Programm: {name}. Einzelheiten stehen in der Fehlerausgabe (stderr).</translation>
    </message>
    <message>
        <source>A machine is looked up in a database; name it with --database.</source>
        <translation>Eine Maschine wird in einer Datenbank nachgeschlagen; diese mit --database angeben.</translation>
    </message>
    <message>
        <source>There is no database {where}; names are looked up in one that is there.</source>
        <translation>Es gibt keine Datenbank {where}; Namen werden nur in einer vorhandenen nachgeschlagen.</translation>
    </message>
    <message>
        <source>Kept as trial {number} in {where}.</source>
        <translation>Behalten als Versuch {number} in {where}.</translation>
    </message>
    <message>
        <source>One trial has one {column}, and this file names {names}; split it.</source>
        <translation>Zu einem Versuch gehört nur ein Eintrag in {column}; diese Datei nennt {names}. Bitte aufteilen.</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>There is no {what} “{name}” in the database; it knows {known}.</source>
        <translation>In der Datenbank gibt es {what} „{name}“ nicht; bekannt: {known}.</translation>
    </message>
    <message>
        <source>There is no reading along {axis} to draw.</source>
        <translation>Es gibt keinen Messwert entlang {axis} zum Zeichnen.</translation>
    </message>
    <message>
        <source>{file} cannot be written; choose another place.</source>
        <translation>{file} lässt sich nicht schreiben; einen anderen Ort wählen.</translation>
    </message>
    <message>
        <source>  Line {line} stands out from the others: read that gauge again.</source>
        <translation>  Zeile {line} fällt gegenüber den anderen auf: diese Messstelle erneut messen.</translation>
    </message>
    <message>
        <source>To be done again: {results}.</source>
        <translation>Zu wiederholen: {results}.</translation>
    </message>
    <message>
        <source>In doubt until a quick check: {results}.</source>
        <translation>Bis zu einer Kurzprüfung zweifelhaft: {results}.</translation>
    </message>
    <message>
        <source>Nothing more that was kept is spoiled by it.</source>
        <translation>Sonst wird nichts Behaltenes dadurch ungültig.</translation>
    </message>
    <message>
        <source>One lot is filament of one maker, colour and batch, usually one spool.</source>
        <translation>Eine Charge ist Filament eines Herstellers, einer Farbe und eines Fertigungsloses, meist eine Spule.</translation>
    </message>
    <message>
        <source>New lot</source>
        <translation>Neue Charge</translation>
    </message>
    <message>
        <source>u is a standard uncertainty. The values filled in are common practice for a caliper, no source: edit. Hand: repeatability of one re-seated reading from your last check; leave empty without one.</source>
        <translation>u ist eine Standardunsicherheit. Die eingetragenen Werte sind für Messschieber üblich, ohne Quelle: bitte anpassen. Hand: Wiederholstandardabweichung eines neu angesetzten Messwerts aus Ihrer letzten Prüfung; ohne eine solche leer lassen.</translation>
    </message>
    <message>
        <source>New instrument</source>
        <translation>Neues Messmittel</translation>
    </message>
    <message>
        <source>u is a standard uncertainty. Keeping a check on the page Instruments writes these by itself.</source>
        <translation>u ist eine Standardunsicherheit. Wird auf der Seite Messmittel eine Prüfung behalten, trägt sie diese Werte selbst ein.</translation>
    </message>
    <message>
        <source>Change instrument</source>
        <translation>Messmittel ändern</translation>
    </message>
    <message>
        <source>&amp;Save</source>
        <translation>&amp;Speichern</translation>
    </message>
    <message>
        <source>Give the degrees of freedom too: the number of readings less one.</source>
        <translation>Auch die Freiheitsgrade angeben: Zahl der Messwerte weniger eins.</translation>
    </message>
    <message>
        <source>Give the standard deviation too, or leave both empty.</source>
        <translation>Auch die Standardabweichung angeben oder beides leer lassen.</translation>
    </message>
    <message>
        <source>&amp;Name</source>
        <translation>&amp;Name</translation>
    </message>
    <message>
        <source>&amp;Material</source>
        <translation>&amp;Werkstoff</translation>
    </message>
    <message>
        <source>&amp;Colour</source>
        <translation>&amp;Farbe</translation>
    </message>
    <message>
        <source>Ma&amp;ker</source>
        <translation>&amp;Hersteller</translation>
    </message>
    <message>
        <source>&amp;Batch</source>
        <translation>Fertigungsl&amp;os</translation>
    </message>
    <message>
        <source>Nominal &amp;diameter</source>
        <translation>Nenn&amp;durchmesser</translation>
    </message>
    <message>
        <source>N&amp;ote</source>
        <translation>&amp;Bemerkung</translation>
    </message>
    <message>
        <source>&amp;Kind</source>
        <translation>&amp;Art</translation>
    </message>
    <message>
        <source>&amp;Resolution</source>
        <translation>A&amp;uflösung</translation>
    </message>
    <message>
        <source>u of zero, &amp;outside</source>
        <translation>u Nullpunkt, auß&amp;en</translation>
    </message>
    <message>
        <source>u of zero, &amp;inside</source>
        <translation>u Nullpunkt, &amp;innen</translation>
    </message>
    <message>
        <source>mm per 100 mm</source>
        <translation>mm je 100 mm</translation>
    </message>
    <message>
        <source>u of s&amp;cale</source>
        <translation>u &amp;Maßstab</translation>
    </message>
    <message>
        <source>&amp;Hand, one sd</source>
        <translation>&amp;Hand, 1 s</translation>
    </message>
    <message>
        <source>Hand, &amp;degrees of freedom</source>
        <translation>Hand, F&amp;reiheitsgrade</translation>
    </message>
    <message>
        <source>every setting. A signal asks for a reading, not for an adjustment.</source>
        <translation>alle Einstellungen. Ein Signal verlangt einen Messwert, kein Nachstellen.</translation>
    </message>
    <message>
        <source>again by</source>
        <translation>erneut bis</translation>
    </message>
    <message>
        <source>{day}, every {days} days</source>
        <translation>{day}, alle {days} Tage</translation>
    </message>
    <message>
        <source>Not firm yet</source>
        <translation>Noch nicht gesichert</translation>
    </message>
    <message>
        <source>Steady</source>
        <translation>Stabil</translation>
    </message>
    <message>
        <source>Signal</source>
        <translation>Signal</translation>
    </message>
    <message>
        <source>Earlier</source>
        <translation>Früher</translation>
    </message>
    <message>
        <source>Cannot tell yet</source>
        <translation>Lässt sich noch nicht sagen</translation>
    </message>
    <message>
        <source>Next reading</source>
        <translation>Nächster Messwert</translation>
    </message>
    <message>
        <source>Choose or add a machine above; its results are charted here.</source>
        <translation>Oben eine Maschine wählen oder hinzufügen; ihre Ergebnisse stehen hier als Regelkarte.</translation>
    </message>
    <message>
        <source>Choose or add an instrument above; its checks are charted here.</source>
        <translation>Oben ein Messmittel wählen oder hinzufügen; seine Prüfungen stehen hier als Regelkarte.</translation>
    </message>
    <message>
        <source>upper</source>
        <translation>oben</translation>
    </message>
    <message>
        <source>mean</source>
        <translation>Mittel</translation>
    </message>
    <message>
        <source>lower</source>
        <translation>unten</translation>
    </message>
    <message>
        <source>Single results</source>
        <translation>Einzelwerte</translation>
    </message>
    <message>
        <source>signal</source>
        <translation>Signal</translation>
    </message>
    <message>
        <source>limit</source>
        <translation>Grenze</translation>
    </message>
    <message>
        <source>moving range of two</source>
        <translation>gleitende Spannweite zweier Werte</translation>
    </message>
    <message>
        <source>Moving range</source>
        <translation>Gleitende Spannweite</translation>
    </message>
    <message>
        <source>smoothed mean</source>
        <translation>geglätteter Mittelwert</translation>
    </message>
    <message>
        <source>Smoothed mean</source>
        <translation>Geglätteter Mittelwert</translation>
    </message>
    <message>
        <source>day it was kept</source>
        <translation>Tag, an dem behalten</translation>
    </message>
    <message>
        <source>Results by date</source>
        <translation>Ergebnisse nach Datum</translation>
    </message>
    <message>
        <source>result</source>
        <translation>Ergebnis</translation>
    </message>
    <message>
        <source>results in their order, {first} to {last}</source>
        <translation>Ergebnisse der Reihe nach, {first} bis {last}</translation>
    </message>
    <message>
        <source>Trial {number}, {when}: {value}</source>
        <translation>Versuch {number}, {when}: {value}</translation>
    </message>
    <message>
        <source>Trial {before} to {after}: {range}{unit}</source>
        <translation>Versuch {before} bis {after}: {range}{unit}</translation>
    </message>
    <message>
        <source>Smoothed mean after trial {number}: {value}{unit}</source>
        <translation>Geglätteter Mittelwert nach Versuch {number}: {value}{unit}</translation>
    </message>
    <message>
        <source>beyond the limit</source>
        <translation>außerhalb der Eingriffsgrenze</translation>
    </message>
    <message>
        <source>two of three beyond two σ</source>
        <translation>zwei von drei außerhalb von zwei σ</translation>
    </message>
    <message>
        <source>eight or more on one side</source>
        <translation>acht oder mehr auf einer Seite</translation>
    </message>
    <message>
        <source>six or more steadily up or down</source>
        <translation>sechs oder mehr stetig steigend oder fallend</translation>
    </message>
    <message>
        <source>jump from the one before</source>
        <translation>Sprung gegenüber dem vorigen Wert</translation>
    </message>
    <message>
        <source>smoothed mean beyond its limit</source>
        <translation>geglätteter Mittelwert außerhalb seiner Grenze</translation>
    </message>
    <message>
        <source>{quantity}: results {count}, with a signal {signals}. The newest: {newest}.</source>
        <translation>{quantity}: Ergebnisse {count}, mit Signal {signals}. Das neueste: {newest}.</translation>
    </message>
    <message>
        <source>Not told yet</source>
        <translation>Noch nicht bestimmt</translation>
    </message>
    <message>
        <source>outside</source>
        <translation>außen</translation>
    </message>
    <message>
        <source>inside</source>
        <translation>innen</translation>
    </message>
    <message>
        <source>at the tips</source>
        <translation>an den Spitzen</translation>
    </message>
    <message>
        <source>depth rod</source>
        <translation>Tiefenmaß</translation>
    </message>
    <message>
        <source>correction</source>
        <translation>Korrektion</translation>
    </message>
    <message>
        <source>reference, {unit}</source>
        <translation>Referenzwert, {unit}</translation>
    </message>
    <message>
        <source>correction, {unit}</source>
        <translation>Korrektion, {unit}</translation>
    </message>
    <message>
        <source>Correction against reference</source>
        <translation>Korrektion über dem Referenzwert</translation>
    </message>
    <message>
        <source>Correction at {reference} {unit}: {value} ± {U} {unit}, readings: {count}; limit ± {limit} {unit}</source>
        <translation>Korrektion bei {reference} {unit}: {value} ± {U} {unit}, Messwerte: {count}; Grenze ± {limit} {unit}</translation>
    </message>
    <message>
        <source>limit of error</source>
        <translation>Fehlergrenze</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>Part</source>
        <translation>Teil</translation>
    </message>
    <message>
        <source>Reference {unit}</source>
        <translation>Referenz {unit}</translation>
    </message>
    <message>
        <source>± {unit}</source>
        <translation>± {unit}</translation>
    </message>
    <message>
        <source>Reading {unit}</source>
        <translation>Messwert {unit}</translation>
    </message>
    <message>
        <source>Error {unit}</source>
        <translation>Abw. {unit}</translation>
    </message>
    <message>
        <source>No reading yet.</source>
        <translation>Noch kein Messwert.</translation>
    </message>
    <message>
        <source>Row {row}: choose the part of the check.</source>
        <translation>Zeile {row}: den Teil der Prüfung wählen.</translation>
    </message>
    <message>
        <source>These readings were begun with {name}: pick it again and keep or clear them first.</source>
        <translation>Diese Messwerte wurden mit {name} begonnen: es wieder wählen und sie erst behalten oder leeren.</translation>
    </message>
    <message>
        <source>Jaws</source>
        <translation>Messschenkel</translation>
    </message>
    <message>
        <source>None: the page that reads it says what to do.</source>
        <translation>Keine: Die Seite, die es misst, sagt, was zu tun ist.</translation>
    </message>
    <message>
        <source>Smallest error</source>
        <translation>Kleinster Fehler</translation>
    </message>
    <message>
        <source>No instrument is picked: its zero and scale are not in these numbers.</source>
        <translation>Kein Messmittel gewählt: Sein Nullpunkt und sein Maßstab sind in diesen Zahlen nicht enthalten.</translation>
    </message>
    <message>
        <source>Please note</source>
        <translation>Beachten</translation>
    </message>
    <message>
        <source>Readings: {count}; U twice the standard uncertainty; at best: however often it is read.</source>
        <translation>Messwerte: {count}; U doppelte Standardunsicherheit; bestenfalls: wie oft auch gemessen wird.</translation>
    </message>
    <message>
        <source>Expected before printing</source>
        <translation>Vor dem Druck erwartet</translation>
    </message>
    <message>
        <source>at best ± {floor}</source>
        <translation>bestenfalls ± {floor}</translation>
    </message>
    <message>
        <source>{page} holds readings that are not kept yet. Keep or clear them first.</source>
        <translation>Auf {page} stehen Messwerte, die noch nicht behalten sind. Erst behalten oder leeren.</translation>
    </message>
    <message>
        <source>Type the temperature of the nozzle that this filament wants; until then nothing is written.</source>
        <translation>Die Düsentemperatur eingeben, die dieses Filament braucht; vorher wird nichts geschrieben.</translation>
    </message>
    <message>
        <source>Cannot be written yet</source>
        <translation>Kann noch nicht geschrieben werden</translation>
    </message>
    <message>
        <source>Refused</source>
        <translation>Abgelehnt</translation>
    </message>
    <message>
        <source>… and {count} more lines or reasons.</source>
        <translation>… und {count} weitere Zeilen oder Gründe.</translation>
    </message>
    <message>
        <source>Read back line by line: within the travel and the limits as entered, heaters off first and last.</source>
        <translation>Zeile für Zeile zurückgelesen: innerhalb von Verfahrweg und eingegebenen Grenzen, Heizungen zuerst und zuletzt aus.</translation>
    </message>
    <message>
        <source>In order</source>
        <translation>In Ordnung</translation>
    </message>
    <message>
        <source>Caution</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <source>Line {line}: {says}</source>
        <translation>Zeile {line}: {says}</translation>
    </message>
    <message>
        <source>filament for the piece</source>
        <translation>Filament für das Stück</translation>
    </message>
    <message>
        <source>as commanded</source>
        <translation>wie befohlen</translation>
    </message>
    <message>
        <source>purged beside it</source>
        <translation>daneben gespült</translation>
    </message>
    <message>
        <source>highest rate</source>
        <translation>höchste Rate</translation>
    </message>
    <message>
        <source>at least {minutes} min</source>
        <translation>mindestens {minutes} min</translation>
    </message>
    <message>
        <source>room on the bed</source>
        <translation>Platz auf dem Bett</translation>
    </message>
    <message>
        <source>without heating</source>
        <translation>ohne Aufheizen</translation>
    </message>
    <message>
        <source>DEMO SHOP, invented data: limits and temperatures of no real machine. Do not run it on yours.</source>
        <translation>DEMO-WERKSTATT, erfundene Daten: Grenzen und Temperaturen keiner wirklichen Maschine. Nicht auf der eigenen laufen lassen.</translation>
    </message>
    <message>
        <source>{value:g} {unit} is above the {most:g} {unit} entered for this machine; change it there first.</source>
        <translation>{value:g} {unit} liegt über den {most:g} {unit}, die für diese Maschine eingetragen sind; erst dort ändern.</translation>
    </message>
    <message>
        <source>machine: {name}</source>
        <translation>Maschine: {name}</translation>
    </message>
    <message>
        <source>filament lot: {name}</source>
        <translation>Filamentcharge: {name}</translation>
    </message>
    <message>
        <source>Trial {number}, {used} kg: {value}</source>
        <translation>Versuch {number}, {used} kg: {value}</translation>
    </message>
    <message>
        <source>filament used, kg</source>
        <translation>Filamentverbrauch, kg</translation>
    </message>
    <message>
        <source>By filament used</source>
        <translation>Nach Filamentverbrauch</translation>
    </message>
    <message>
        <source>Results between no two weighings of their spool: {count}; weigh it again.</source>
        <translation>Ergebnisse ohne zwei Wägungen ihrer Spule davor und danach: {count}; Spule erneut wägen.</translation>
    </message>
    <message>
        <source>Left out</source>
        <translation>Ausgelassen</translation>
    </message>
    <message>
        <source>change</source>
        <translation>Änderung</translation>
    </message>
    <message>
        <source>filament</source>
        <translation>Filament</translation>
    </message>
    <message>
        <source>{low} to {high} kg</source>
        <translation>{low} bis {high} kg</translation>
    </message>
    <message>
        <source>known to</source>
        <translation>bekannt auf</translation>
    </message>
    <message>
        <source>newest</source>
        <translation>neuester</translation>
    </message>
    <message>
        <source>every setting, until the nozzle was looked at.</source>
        <translation>alle Einstellungen, bis die Düse angesehen wurde.</translation>
    </message>
    <message>
        <source>Good enough?</source>
        <translation>Gut genug?</translation>
    </message>
    <message>
        <source>pieces</source>
        <translation>Stücke</translation>
    </message>
    <message>
        <source>piece</source>
        <translation>Stück</translation>
    </message>
    <message>
        <source>mass per length, g/m</source>
        <translation>Masse je Länge, g/m</translation>
    </message>
    <message>
        <source>samples</source>
        <translation>Proben</translation>
    </message>
    <message>
        <source>sample</source>
        <translation>Probe</translation>
    </message>
    <message>
        <source>density, g/cm³</source>
        <translation>Dichte, g/cm³</translation>
    </message>
    <message>
        <source>Diameter around and along</source>
        <translation>Durchmesser am Umfang und entlang</translation>
    </message>
    <message>
        <source>Mass per length</source>
        <translation>Masse je Länge</translation>
    </message>
    <message>
        <source>Density</source>
        <translation>Dichte</translation>
    </message>
    <message>
        <source>equivalent, {d}</source>
        <translation>äquivalent, {d}</translation>
    </message>
    <message>
        <source>largest</source>
        <translation>größter</translation>
    </message>
    <message>
        <source>at 90°</source>
        <translation>bei 90°</translation>
    </message>
    <message>
        <source>claimed ± {tolerance} mm</source>
        <translation>angegeben ± {tolerance} mm</translation>
    </message>
    <message>
        <source>place along the filament</source>
        <translation>Stelle entlang des Filaments</translation>
    </message>
    <message>
        <source>diameter − nominal, mm</source>
        <translation>Durchmesser − Nennmaß, mm</translation>
    </message>
    <message>
        <source>out of round</source>
        <translation>unrund</translation>
    </message>
    <message>
        <source>Places: {count}; equivalent diameter {d}; ovality {oval}.</source>
        <translation>Stellen: {count}; äquivalenter Durchmesser {d}; Ovalität {oval}.</translation>
    </message>
    <message>
        <source>place {place}: {name} {reading} mm, oval by {oval} mm</source>
        <translation>Stelle {place}: {name} {reading} mm, oval um {oval} mm</translation>
    </message>
    <message>
        <source>mean, {mean}</source>
        <translation>Mittelwert, {mean}</translation>
    </message>
    <message>
        <source>{count} {name}; mean {mean}.</source>
        <translation>{count} {name}; Mittelwert {mean}.</translation>
    </message>
    <message>
        <source>Place</source>
        <translation>Stelle</translation>
    </message>
    <message>
        <source>Oval mm</source>
        <translation>Oval mm</translation>
    </message>
    <message>
        <source>Reading mm</source>
        <translation>Messwert mm</translation>
    </message>
    <message>
        <source>Piece</source>
        <translation>Stück</translation>
    </message>
    <message>
        <source>Length mm</source>
        <translation>Länge mm</translation>
    </message>
    <message>
        <source>Mass g</source>
        <translation>Masse g</translation>
    </message>
    <message>
        <source>Sample</source>
        <translation>Probe</translation>
    </message>
    <message>
        <source>Balance shows g</source>
        <translation>Waage zeigt g</translation>
    </message>
    <message>
        <source>This row belongs to no place: add places first, then paste.</source>
        <translation>Diese Zeile gehört zu keiner Stelle: erst Stellen hinzufügen, dann einfügen.</translation>
    </message>
    <message>
        <source>Type the length of this piece.</source>
        <translation>Die Länge dieses Stücks eingeben.</translation>
    </message>
    <message>
        <source>place {number}, largest</source>
        <translation>Stelle {number}, größter</translation>
    </message>
    <message>
        <source>place {number}, at 90°</source>
        <translation>Stelle {number}, bei 90°</translation>
    </message>
    <message>
        <source>piece {number}</source>
        <translation>Stück {number}</translation>
    </message>
    <message>
        <source>sample {number}, in air</source>
        <translation>Probe {number}, in Luft</translation>
    </message>
    <message>
        <source>Front left</source>
        <translation>Vorn links</translation>
    </message>
    <message>
        <source>Front right</source>
        <translation>Vorn rechts</translation>
    </message>
    <message>
        <source>Back left</source>
        <translation>Hinten links</translation>
    </message>
    <message>
        <source>Back right</source>
        <translation>Hinten rechts</translation>
    </message>
    <message>
        <source>Place {number}</source>
        <translation>Stelle {number}</translation>
    </message>
    <message>
        <source>Diagonal {number}, {what}</source>
        <translation>Diagonale {number}, {what}</translation>
    </message>
    <message>
        <source>sample {number}, in water</source>
        <translation>Probe {number}, im Wasser</translation>
    </message>
    <message>
        <source>No repeat yet.</source>
        <translation>Noch keine Wiederholung.</translation>
    </message>
    <message>
        <source>Rate
mm³/s</source>
        <translation>Rate
mm³/s</translation>
    </message>
    <message>
        <source>Asked
mm</source>
        <translation>Verlangt
mm</translation>
    </message>
    <message>
        <source>asked</source>
        <translation>verlangt</translation>
    </message>
    <message>
        <source>Fed
%</source>
        <translation>Gefördert
%</translation>
    </message>
    <message>
        <source>Mass
g</source>
        <translation>Masse
g</translation>
    </message>
    <message>
        <source>Mark
mm</source>
        <translation>Marke
mm</translation>
    </message>
    <message>
        <source>Rest
mm</source>
        <translation>Rest
mm</translation>
    </message>
    <message>
        <source>mass of repeat {number}</source>
        <translation>Masse der Wiederholung {number}</translation>
    </message>
    <message>
        <source>rest of repeat {number}</source>
        <translation>Rest der Wiederholung {number}</translation>
    </message>
    <message>
        <source>mean, {mean} %</source>
        <translation>Mittelwert, {mean} %</translation>
    </message>
    <message>
        <source>repeats</source>
        <translation>Wiederholungen</translation>
    </message>
    <message>
        <source>leave it: ±0.5 %</source>
        <translation>belassen: ±0,5 %</translation>
    </message>
    <message>
        <source>repeat</source>
        <translation>Wiederholung</translation>
    </message>
    <message>
        <source>fed − commanded, %</source>
        <translation>gefördert − befohlen, %</translation>
    </message>
    <message>
        <source>Fed less commanded</source>
        <translation>Gefördert gegenüber befohlen</translation>
    </message>
    <message>
        <source>Repeats: {count}; mean {mean} %.</source>
        <translation>Wiederholungen: {count}; Mittel {mean} %.</translation>
    </message>
    <message>
        <source>Rates so far: {count}.</source>
        <translation>Raten bisher: {count}.</translation>
    </message>
    <message>
        <source>under load, slow, {share} %</source>
        <translation>unter Last, langsam, {share} %</translation>
    </message>
    <message>
        <source>no slip is proved up to {rate:.3g} mm³/s</source>
        <translation>bis {rate:.3g} mm³/s ist kein Schlupf nachgewiesen</translation>
    </message>
    <message>
        <source>±0.5 %</source>
        <translation>±0,5 %</translation>
    </message>
    <message>
        <source>volumetric rate, mm³/s</source>
        <translation>Volumenrate, mm³/s</translation>
    </message>
    <message>
        <source>without load {share} %</source>
        <translation>ohne Last {share} %</translation>
    </message>
    <message>
        <source>without load</source>
        <translation>ohne Last</translation>
    </message>
    <message>
        <source>{rate:g} mm³/s: {share} %</source>
        <translation>{rate:g} mm³/s: {share} %</translation>
    </message>
    <message>
        <source>under load</source>
        <translation>unter Last</translation>
    </message>
    <message>
        <source>slip is proved</source>
        <translation>Schlupf nachgewiesen</translation>
    </message>
    <message>
        <source>Weighed {when}</source>
        <translation>Gewogen {when}</translation>
    </message>
    <message>
        <source>It lost {loss}.</source>
        <translation>Verlust: {loss}.</translation>
    </message>
    <message>
        <source>{stock} left.</source>
        <translation>Noch {stock} vorhanden.</translation>
    </message>
    <message>
        <source>No weighing yet.</source>
        <translation>Noch keine Wägung.</translation>
    </message>
    <message>
        <source>No strand yet.</source>
        <translation>Noch kein Strang.</translation>
    </message>
    <message>
        <source>{percent:.1f}</source>
        <translation>{percent:.1f}</translation>
    </message>
    <message>
        <source>Row {row}: type the nozzle&apos;s temperature; it goes into the empty rows below, too.</source>
        <translation>Zeile {row}: die Düsentemperatur eingeben; sie gilt auch für die leeren Zeilen darunter.</translation>
    </message>
    <message>
        <source>delivered − commanded, %</source>
        <translation>geliefert − befohlen, %</translation>
    </message>
    <message>
        <source>Delivered share</source>
        <translation>Gelieferter Anteil</translation>
    </message>
    <message>
        <source>{rate:g} mm³/s at {temperature:.0f} °C: {percent:.1f} % delivered</source>
        <translation>{rate:g} mm³/s bei {temperature:.0f} °C: {percent:.1f} % geliefert</translation>
    </message>
    <message>
        <source>2 % less</source>
        <translation>2 % weniger</translation>
    </message>
    <message>
        <source>{temperature:.0f} °C</source>
        <translation>{temperature:.0f} °C</translation>
    </message>
    <message>
        <source>Trial {number} has lost its conditions; withdraw it.</source>
        <translation>Versuch {number} hat seine Bedingungen verloren; bitte zurückziehen.</translation>
    </message>
    <message>
        <source>mean less ridges, {mean} ± {U} {unit}</source>
        <translation>Mittelwert ohne Wülste, {mean} ± {U} {unit}</translation>
    </message>
    <message>
        <source>mean, {mean} ± {U} {unit}</source>
        <translation>Mittelwert, {mean} ± {U} {unit}</translation>
    </message>
    <message>
        <source>right flow, {right:.4g} {unit}</source>
        <translation>richtiger Durchfluss, {right:.4g} {unit}</translation>
    </message>
    <message>
        <source>readings</source>
        <translation>Messwerte</translation>
    </message>
    <message>
        <source>Readings</source>
        <translation>Messwerte</translation>
    </message>
    <message>
        <source>zero at {value} ± {U} %</source>
        <translation>null bei {value} ± {U} %</translation>
    </message>
    <message>
        <source>judge {number}</source>
        <translation>Bewerter {number}</translation>
    </message>
    <message>
        <source>change of the factor in force, %</source>
        <translation>Änderung des gültigen Faktors, %</translation>
    </message>
    <message>
        <source>score: gaps below zero, ridges above</source>
        <translation>Punkte: Lücken unter null, Wülste darüber</translation>
    </message>
    <message>
        <source>Scores</source>
        <translation>Bewertungen</translation>
    </message>
    <message>
        <source>Scores: {count}; {told}.</source>
        <translation>Bewertungen: {count}; {told}.</translation>
    </message>
    <message>
        <source>in force, {factor:g}</source>
        <translation>gültig, {factor:g}</translation>
    </message>
    <message>
        <source>they conflict</source>
        <translation>sie widersprechen sich</translation>
    </message>
    <message>
        <source>together</source>
        <translation>zusammen</translation>
    </message>
    <message>
        <source>leave it: ±1.5 %</source>
        <translation>belassen: ±1,5 %</translation>
    </message>
    <message>
        <source>1 wall, 2 mass, 3 top pads</source>
        <translation>1 Wand, 2 Masse, 3 Deckfelder</translation>
    </message>
    <message>
        <source>Estimates of flow</source>
        <translation>Schätzwerte des Durchflusses</translation>
    </message>
    <message>
        <source>wall</source>
        <translation>Wand</translation>
    </message>
    <message>
        <source>mass</source>
        <translation>Masse</translation>
    </message>
    <message>
        <source>top pads</source>
        <translation>Deckfelder</translation>
    </message>
    <message>
        <source>{name}, {value} ± {U} %</source>
        <translation>{name}, {value} ± {U} %</translation>
    </message>
    <message>
        <source>Row {row}: type the flow of this pad.</source>
        <translation>Zeile {row}: den Durchfluss dieses Feldes eingeben.</translation>
    </message>
    <message>
        <source>“{text}” is no place; type x, a blank and y, then a semicolon.</source>
        <translation>„{text}“ ist kein Ort; x, ein Leerzeichen und y eingeben, dann ein Semikolon.</translation>
    </message>
    <message>
        <source>Centre</source>
        <translation>Bettmitte</translation>
    </message>
    <message>
        <source>P{number}</source>
        <translation>P{number}</translation>
    </message>
    <message>
        <source>Probe</source>
        <translation>Punkt</translation>
    </message>
    <message>
        <source>X mm</source>
        <translation>X mm</translation>
    </message>
    <message>
        <source>Y mm</source>
        <translation>Y mm</translation>
    </message>
    <message>
        <source>After min</source>
        <translation>Nach min</translation>
    </message>
    <message>
        <source>Z mm</source>
        <translation>Z mm</translation>
    </message>
    <message>
        <source>Off mm</source>
        <translation>Abw. mm</translation>
    </message>
    <message>
        <source>Centre at {minutes} min</source>
        <translation>Bettmitte nach {minutes} min</translation>
    </message>
    <message>
        <source>stays</source>
        <translation>bleibt</translation>
    </message>
    <message>
        <source>clockwise</source>
        <translation>im Uhrzeigersinn</translation>
    </message>
    <message>
        <source>anticlockwise</source>
        <translation>gegen den Uhrzeigersinn</translation>
    </message>
    <message>
        <source>Places: {count}; the bed falls by {fall}, flatness {flat}.</source>
        <translation>Orte: {count}; das Bett fällt um {fall}, Ebenheit {flat}.</translation>
    </message>
    <message>
        <source>{number}: stays</source>
        <translation>{number}: bleibt</translation>
    </message>
    <message>
        <source>Blue low, orange high. Turns seen from above.</source>
        <translation>Blau tief, orange hoch. Drehungen von oben gesehen.</translation>
    </message>
    <message>
        <source>{number}: {sign} {angle} ± {U}°</source>
        <translation>{number}: {sign} {angle} ± {U}°</translation>
    </message>
    <message>
        <source>Screw {number}: {what}, {turns} ± {U} turns</source>
        <translation>Schraube {number}: {what}, {turns} ± {U} Umdrehungen</translation>
    </message>
    <message>
        <source>time constant {tau} min</source>
        <translation>Zeitkonstante {tau} min</translation>
    </message>
    <message>
        <source>no drift told</source>
        <translation>keine Drift erkennbar</translation>
    </message>
    <message>
        <source>time since heating began, min</source>
        <translation>Zeit seit Heizbeginn, min</translation>
    </message>
    <message>
        <source>height, mm</source>
        <translation>Höhe, mm</translation>
    </message>
    <message>
        <source>Drift while soaking</source>
        <translation>Drift beim Durchwärmen</translation>
    </message>
    <message>
        <source>Readings: {count}; {name}.</source>
        <translation>Messwerte: {count}; {name}.</translation>
    </message>
    <message>
        <source>Row {row}: when was that read? Type the minutes since the heating began.</source>
        <translation>Zeile {row}: Wann wurde das gemessen? Die Minuten seit Heizbeginn eingeben.</translation>
    </message>
    <message>
        <source>Row {row}: where was that probed? Type X and Y.</source>
        <translation>Zeile {row}: Wo wurde das angetastet? X und Y eingeben.</translation>
    </message>
    <message>
        <source>at {place}</source>
        <translation>Stelle {place}</translation>
    </message>
    <message>
        <source>{symbol} from −, from +</source>
        <translation>{symbol} von −, von +</translation>
    </message>
    <message>
        <source>Along</source>
        <translation>Entlang</translation>
    </message>
    <message>
        <source>Sideways</source>
        <translation>Quer</translation>
    </message>
    <message>
        <source>Run {number}</source>
        <translation>Lauf {number}</translation>
    </message>
    <message>
        <source>Step {number}</source>
        <translation>Schritt {number}</translation>
    </message>
    <message>
        <source>−</source>
        <translation>−</translation>
    </message>
    <message>
        <source>+</source>
        <translation>+</translation>
    </message>
    <message>
        <source>rest</source>
        <translation>Ruhe</translation>
    </message>
    <message>
        <source>push</source>
        <translation>Druck</translation>
    </message>
    <message>
        <source>From</source>
        <translation>Von</translation>
    </message>
    <message>
        <source>Target mm</source>
        <translation>Ziel mm</translation>
    </message>
    <message>
        <source>Differs mm</source>
        <translation>Differenz mm</translation>
    </message>
    <message>
        <source>Middle</source>
        <translation>Mitte</translation>
    </message>
    <message>
        <source>Left</source>
        <translation>Links</translation>
    </message>
    <message>
        <source>Right</source>
        <translation>Rechts</translation>
    </message>
    <message>
        <source>Front</source>
        <translation>Vorn</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Hinten</translation>
    </message>
    <message>
        <source>Low</source>
        <translation>Unten</translation>
    </message>
    <message>
        <source>High</source>
        <translation>Oben</translation>
    </message>
    <message>
        <source>from −</source>
        <translation>von −</translation>
    </message>
    <message>
        <source>from +</source>
        <translation>von +</translation>
    </message>
    <message>
        <source>pair, in the order of reading</source>
        <translation>Paar, in der Reihenfolge der Messung</translation>
    </message>
    <message>
        <source>reading − middle of its place, mm</source>
        <translation>Messwert − Mitte seiner Stelle, mm</translation>
    </message>
    <message>
        <source>Readings from either side</source>
        <translation>Messwerte von beiden Seiten</translation>
    </message>
    <message>
        <source>stands out</source>
        <translation>fällt auf</translation>
    </message>
    <message>
        <source>±2s</source>
        <translation>±2s</translation>
    </message>
    <message>
        <source>push, in the order of reading</source>
        <translation>Druck, in der Reihenfolge der Messung</translation>
    </message>
    <message>
        <source>moved by {force} N, mm</source>
        <translation>bewegt durch {force} N, mm</translation>
    </message>
    <message>
        <source>Stiffness</source>
        <translation>Steifigkeit</translation>
    </message>
    <message>
        <source>limit {value} mm</source>
        <translation>Grenze {value} mm</translation>
    </message>
    <message>
        <source>position, mm</source>
        <translation>Position, mm</translation>
    </message>
    <message>
        <source>measured − target, mm</source>
        <translation>gemessen − Ziel, mm</translation>
    </message>
    <message>
        <source>Deviation</source>
        <translation>Abweichung</translation>
    </message>
    <message>
        <source>mean of both</source>
        <translation>Mittel beider</translation>
    </message>
    <message>
        <source>{share} % of the command arrives</source>
        <translation>{share} % des Befehls kommen an</translation>
    </message>
    <message>
        <source>commanded since the turn, mm</source>
        <translation>befohlen seit der Umkehr, mm</translation>
    </message>
    <message>
        <source>travelled, mm</source>
        <translation>zurückgelegt, mm</translation>
    </message>
    <message>
        <source>Lost-motion curve</source>
        <translation>Kurve des toten Gangs</translation>
    </message>
    <message>
        <source>nothing lost</source>
        <translation>nichts verloren</translation>
    </message>
    <message>
        <source>no loss</source>
        <translation>kein Verlust</translation>
    </message>
    <message>
        <source>play {value}</source>
        <translation>Spiel {value}</translation>
    </message>
    <message>
        <source>Length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>Square as it stands</source>
        <translation>Winkel, wie er steht</translation>
    </message>
    <message>
        <source>Square turned over</source>
        <translation>Winkel, umgeschlagen</translation>
    </message>
    <message>
        <source>strand {number}</source>
        <translation>Strang {number}</translation>
    </message>
    <message>
        <source>Pad {letter}, judge {judge}</source>
        <translation>Feld {letter}, Bewerter {judge}</translation>
    </message>
    <message>
        <source>{letter}, {what}, judge {judge}</source>
        <translation>{letter}, {what}, Bewerter {judge}</translation>
    </message>
    <message>
        <source>{letter} {what}, judge {judge}</source>
        <translation>{letter} {what}, Bewerter {judge}</translation>
    </message>
    <message>
        <source>{letter}, {what}</source>
        <translation>{letter}, {what}</translation>
    </message>
    <message>
        <source>{size} ring</source>
        <translation>Ring {size}</translation>
    </message>
    <message>
        <source>{size} bore</source>
        <translation>Bohrung {size}</translation>
    </message>
    <message>
        <source>block {size}</source>
        <translation>Endmaß {size}</translation>
    </message>
    <message>
        <source>block {size} at the tips</source>
        <translation>Endmaß {size}, Spitze</translation>
    </message>
    <message>
        <source>mass {size} g</source>
        <translation>Gewicht {size} g</translation>
    </message>
    <message>
        <source>water with ice</source>
        <translation>Eiswasser</translation>
    </message>
    <message>
        <source>boiling water</source>
        <translation>siedendes Wasser</translation>
    </message>
    <message>
        <source>line</source>
        <translation>Linie</translation>
    </message>
    <message>
        <source>the square itself</source>
        <translation>der Anschlagwinkel selbst</translation>
    </message>
    <message>
        <source>No score yet.</source>
        <translation>Noch keine Bewertung.</translation>
    </message>
    <message>
        <source>Picture and verdict stay hidden until all pieces are scored.</source>
        <translation>Bild und Urteil bleiben verborgen, bis alle Stücke bewertet sind.</translation>
    </message>
    <message>
        <source>after faster</source>
        <translation>nach schnell</translation>
    </message>
    <message>
        <source>steady</source>
        <translation>gleichmäßig</translation>
    </message>
    <message>
        <source>after slower</source>
        <translation>nach langsam</translation>
    </message>
    <message>
        <source>meets all</source>
        <translation>erfüllt alles</translation>
    </message>
    <message>
        <source>score, 0 to 4, with 95 %</source>
        <translation>Bewertung, 0 bis 4, mit 95 %</translation>
    </message>
    <message>
        <source>{name} at {step:g}: {score:.1f}, {low:.1f} to {high:.1f} (scores: {count})</source>
        <translation>{name} bei {step:g}: {score:.1f}, {low:.1f} bis {high:.1f} (Bewertungen: {count})</translation>
    </message>
    <message>
        <source>value as read, {unit}</source>
        <translation>abgelesener Wert, {unit}</translation>
    </message>
    <message>
        <source>Widths of the steps</source>
        <translation>Breiten der Stufen</translation>
    </message>
    <message>
        <source>use {value:.4g}</source>
        <translation>nutzen: {value:.4g}</translation>
    </message>
    <message>
        <source>{name}, {unit}</source>
        <translation>{name}, {unit}</translation>
    </message>
    <message>
        <source>score, 0 to 4</source>
        <translation>Punkte, 0 bis 4</translation>
    </message>
    <message>
        <source>Scores of the steps</source>
        <translation>Bewertungen der Stufen</translation>
    </message>
    <message>
        <source>value as read</source>
        <translation>Wert wie gemessen</translation>
    </message>
    <message>
        <source>scatter of the widths S, 0.001 mm²</source>
        <translation>Streuung der Breiten S, 0,001 mm²</translation>
    </message>
    <message>
        <source>steps</source>
        <translation>Stufen</translation>
    </message>
    <message>
        <source>parabola</source>
        <translation>Parabel</translation>
    </message>
    <message>
        <source>Values of the steps</source>
        <translation>Werte der Stufen</translation>
    </message>
    <message>
        <source>The log {name} is not here; read it again.</source>
        <translation>Die Aufzeichnung {name} ist nicht hier; bitte erneut einlesen.</translation>
    </message>
    <message>
        <source>{name}: {says}</source>
        <translation>{name}: {says}</translation>
    </message>
    <message>
        <source>The log that was kept is damaged; its peaks are on record.</source>
        <translation>Die behaltene Aufzeichnung ist beschädigt; ihre Spitzen sind erfasst.</translation>
    </message>
    <message>
        <source>The file {name} is not here; choose it again to time it.</source>
        <translation>Die Datei {name} ist nicht hier; zur Zeitermittlung erneut wählen.</translation>
    </message>
    <message>
        <source>Timing {name}…</source>
        <translation>Zeit für {name} wird ermittelt…</translation>
    </message>
    <message>
        <source>Times are those of {count} usual straights; time a file for those of a real part.</source>
        <translation>Die Zeiten gelten für {count} übliche Geraden; für ein echtes Teil die Zeit einer Datei ermitteln.</translation>
    </message>
    <message>
        <source>{name}: {moves} moves; {percent:.0f} % of the printed way at its speed at the last level.</source>
        <translation>{name}: {moves} Bewegungen; auf der letzten Stufe {percent:.0f} % des Druckwegs mit voller Geschwindigkeit.</translation>
    </message>
    <message>
        <source>From {level:.4g} {unit} on the rate passes the flow ceiling, at the last level on {percent:.0f} % of it.</source>
        <translation>Ab {level:.4g} {unit} überschreitet die Rate die Durchflussgrenze, auf der letzten Stufe auf {percent:.0f} % des Wegs.</translation>
    </message>
    <message>
        <source>No log yet.</source>
        <translation>Noch keine Aufzeichnung.</translation>
    </message>
    <message>
        <source>No ripple yet.</source>
        <translation>Noch keine Welle.</translation>
    </message>
    <message>
        <source>ripples</source>
        <translation>Wellen</translation>
    </message>
    <message>
        <source>speed, mm/s</source>
        <translation>Geschwindigkeit, mm/s</translation>
    </message>
    <message>
        <source>crest to crest, mm</source>
        <translation>Abstand der Wellenberge, mm</translation>
    </message>
    <message>
        <source>Wavelength</source>
        <translation>Wellenlänge</translation>
    </message>
    <message>
        <source>ringing, {value}</source>
        <translation>Nachschwingen, {value}</translation>
    </message>
    <message>
        <source>if it rings</source>
        <translation>falls es nachschwingt</translation>
    </message>
    <message>
        <source>if it is a mark</source>
        <translation>falls es ein Abdruck ist</translation>
    </message>
    <message>
        <source>a mark, {value}</source>
        <translation>ein Abdruck, {value}</translation>
    </message>
    <message>
        <source>by ripple {value}</source>
        <translation>nach Welligkeit {value}</translation>
    </message>
    <message>
        <source>whole periods</source>
        <translation>ganze Perioden</translation>
    </message>
    <message>
        <source>while speeding up</source>
        <translation>beim Beschleunigen</translation>
    </message>
    <message>
        <source>left after the ramp</source>
        <translation>Rest nach der Rampe</translation>
    </message>
    <message>
        <source>seen</source>
        <translation>sichtbar</translation>
    </message>
    <message>
        <source>acceleration, mm/s²</source>
        <translation>Beschleunigung, mm/s²</translation>
    </message>
    <message>
        <source>ripple, µm</source>
        <translation>Welligkeit, µm</translation>
    </message>
    <message>
        <source>Ripple by acceleration</source>
        <translation>Welligkeit über der Beschleunigung</translation>
    </message>
    <message>
        <source>peaks</source>
        <translation>Spitzen</translation>
    </message>
    <message>
        <source>highest</source>
        <translation>höchste</translation>
    </message>
    <message>
        <source>spectrum</source>
        <translation>Spektrum</translation>
    </message>
    <message>
        <source>{hz:.1f} Hz</source>
        <translation>{hz:.1f} Hz</translation>
    </message>
    <message>
        <source>frequency, Hz</source>
        <translation>Frequenz, Hz</translation>
    </message>
    <message>
        <source>power against its highest, dB</source>
        <translation>Leistung bezogen auf das Maximum, dB</translation>
    </message>
    <message>
        <source>Spectrum of the log</source>
        <translation>Spektrum der Aufzeichnung</translation>
    </message>
    <message>
        <source>judge {name}</source>
        <translation>Bewerter {name}</translation>
    </message>
    <message>
        <source>95 %</source>
        <translation>95 %</translation>
    </message>
    <message>
        <source>mean score</source>
        <translation>mittlere Punktzahl</translation>
    </message>
    <message>
        <source>{step:g}: {score:.1f}, {low:.1f} to {high:.1f} (scores: {count})</source>
        <translation>{step:g}: {score:.1f}, {low:.1f} bis {high:.1f} (Bewertungen: {count})</translation>
    </message>
    <message>
        <source>{specimen}: {says}</source>
        <translation>{specimen}: {says}</translation>
    </message>
    <message>
        <source>{letter}, judge {judge}</source>
        <translation>{letter}, Bewerter {judge}</translation>
    </message>
    <message>
        <source>nothing is both faster and better</source>
        <translation>nichts ist zugleich schneller und besser</translation>
    </message>
    <message>
        <source>{value:.4g} {unit}</source>
        <translation>{value:.4g} {unit}</translation>
    </message>
    <message>
        <source>time of the part, min</source>
        <translation>Zeit des Teils, min</translation>
    </message>
    <message>
        <source>Score against time</source>
        <translation>Punkte über der Zeit</translation>
    </message>
    <message>
        <source>a layer waits</source>
        <translation>eine Schicht wartet</translation>
    </message>
    <message>
        <source>if it never had to slow down</source>
        <translation>wenn nie gebremst werden müsste</translation>
    </message>
    <message>
        <source>at the highest acceleration</source>
        <translation>bei der höchsten Beschleunigung</translation>
    </message>
    <message>
        <source>levels</source>
        <translation>Stufen</translation>
    </message>
    <message>
        <source>time of the part</source>
        <translation>Zeit des Teils</translation>
    </message>
    <message>
        <source>Where faster buys nothing</source>
        <translation>Wo schneller nichts bringt</translation>
    </message>
    <message>
        <source>The part takes {slow} at {low:.4g} {unit} and {fast} at {high:.4g} {unit}.</source>
        <translation>Das Teil dauert {slow} bei {low:.4g} {unit} und {fast} bei {high:.4g} {unit}.</translation>
    </message>
    <message>
        <source>{level:.4g} {unit}: {percent:.0f} % of the path at its speed</source>
        <translation>{level:.4g} {unit}: {percent:.0f} % des Wegs mit dieser Geschwindigkeit</translation>
    </message>
    <message>
        <source>no wait up to {value:.3g} mm/s</source>
        <translation>kein Warten bis {value:.3g} mm/s</translation>
    </message>
    <message>
        <source>flow ceiling</source>
        <translation>Durchflussgrenze</translation>
    </message>
    <message>
        <source>share of the printed way, %</source>
        <translation>Anteil am Druckweg, %</translation>
    </message>
    <message>
        <source>volumetric rate at most, mm³/s</source>
        <translation>Volumenrate höchstens, mm³/s</translation>
    </message>
    <message>
        <source>Rate along the path</source>
        <translation>Rate entlang des Wegs</translation>
    </message>
    <message>
        <source>The highest rate is {low:.1f} to {high:.1f} mm³/s.</source>
        <translation>Die höchste Rate beträgt {low:.1f} bis {high:.1f} mm³/s.</translation>
    </message>
    <message>
        <source>run: {first}</source>
        <translation>Lauf: {first}</translation>
    </message>
    <message>
        <source>score of the defect, 4 none</source>
        <translation>Punkte für den Fehler, 4 keiner</translation>
    </message>
    <message>
        <source>Half speed</source>
        <translation>Halbe Geschwindigkeit</translation>
    </message>
    <message>
        <source>flow trial</source>
        <translation>Durchflussversuch</translation>
    </message>
    <message>
        <source>predicted</source>
        <translation>vorhergesagt</translation>
    </message>
    <message>
        <source>read</source>
        <translation>gemessen</translation>
    </message>
    <message>
        <source>nominal length, mm</source>
        <translation>Nennlänge, mm</translation>
    </message>
    <message>
        <source>measured − nominal, mm</source>
        <translation>gemessen − Nennmaß, mm</translation>
    </message>
    <message>
        <source>Predicted and read</source>
        <translation>Vorhergesagt und gemessen</translation>
    </message>
    <message>
        <source>Predicted</source>
        <translation>Vorhergesagt</translation>
    </message>
    <message>
        <source>outside U</source>
        <translation>außerhalb U</translation>
    </message>
    <message>
        <source>Features predicted: {count}. Largest error, {largest}.</source>
        <translation>Merkmale vorhergesagt: {count}. Größte Abweichung: {largest}.</translation>
    </message>
    <message>
        <source>Features predicted and read: {count}; outside U: {off}.</source>
        <translation>Merkmale vorhergesagt und gemessen: {count}; außerhalb U: {off}.</translation>
    </message>
    <message>
        <source>{kind} {axis} {length} mm: predicted {error} ± {U} mm</source>
        <translation>{kind} {axis} {length} mm: vorhergesagt {error} ± {U} mm</translation>
    </message>
    <message>
        <source>{kind} {axis}</source>
        <translation>{kind} {axis}</translation>
    </message>
    <message>
        <source>Features of this piece that are predicted: {count}. Lock them before it is printed and read.</source>
        <translation>Vorhergesagte Merkmale dieses Stücks: {count}. Festschreiben, bevor es gedruckt und gemessen wird.</translation>
    </message>
    <message>
        <source>Print a piece with the changed settings, read its features as a size trial, and choose both above.</source>
        <translation>Ein Stück mit den geänderten Einstellungen drucken, seine Merkmale als Maßversuch messen und oben beides wählen.</translation>
    </message>
    <message>
        <source>Lock first</source>
        <translation>Erst festschreiben</translation>
    </message>
    <message>
        <source>Then</source>
        <translation>Danach</translation>
    </message>
    <message>
        <source>Offset and factors are what you tried on the page Whose error; nothing was put in force since that trial.</source>
        <translation>Versatz und Faktoren sind die auf der Seite Wessen Fehler ausprobierten; seit jenem Versuch wurde nichts in Kraft gesetzt.</translation>
    </message>
    <message>
        <source>Offset and factors are what was put in force since that trial; type over them what else changes.</source>
        <translation>Versatz und Faktoren sind die seit jenem Versuch in Kraft gesetzten; was sich sonst ändert, überschreiben.</translation>
    </message>
    <message>
        <source>Changes</source>
        <translation>Änderungen</translation>
    </message>
    <message>
        <source>Our own score</source>
        <translation>Eigene Bilanz</translation>
    </message>
    <message>
        <source>Prediction № {number} was locked {day}, content {digest}.</source>
        <translation>Vorhersage № {number} wurde am {day} festgeschrieben, Inhalt {digest}.</translation>
    </message>
    <message>
        <source>No size trial of this machine and lot was begun since. Print the proof piece, read it on Size error.</source>
        <translation>Seither wurde kein Maßversuch dieser Maschine und Charge begonnen. Das Nachweisteil drucken und auf der Seite Maßabweichung messen.</translation>
    </message>
    <message>
        <source>Locked</source>
        <translation>Festgeschrieben</translation>
    </message>
    <message>
        <source>part {number} (trial № {trial}): {length} mm, error {error} mm</source>
        <translation>Teil {number} (Versuch № {trial}): {length} mm, Abweichung {error} mm</translation>
    </message>
    <message>
        <source>± {mm} mm</source>
        <translation>± {mm} mm</translation>
    </message>
    <message>
        <source>mean error</source>
        <translation>mittlere Abweichung</translation>
    </message>
    <message>
        <source>promised</source>
        <translation>zugesagt</translation>
    </message>
    <message>
        <source>Error against part size</source>
        <translation>Abweichung über der Teilegröße</translation>
    </message>
    <message>
        <source>mean, and 95 % of parts</source>
        <translation>Mittelwert und 95 % der Teile</translation>
    </message>
    <message>
        <source>May be promised</source>
        <translation>Darf zugesagt werden</translation>
    </message>
    <message>
        <source>No promise yet</source>
        <translation>Noch keine Zusage</translation>
    </message>
    <message>
        <source>Fit</source>
        <translation>Passung</translation>
    </message>
    <message>
        <source>No instrument is picked: its uncertainty U is not taken off the tolerance.</source>
        <translation>Kein Messmittel gewählt: Seine Unsicherheit U ist nicht von der Toleranz abgezogen.</translation>
    </message>
    <message>
        <source>Pieces printed before the newest change of settings or machine do not count: {count} left out.</source>
        <translation>Stücke, die vor der neuesten Änderung von Einstellungen oder Maschine gedruckt wurden, zählen nicht: {count} weggelassen.</translation>
    </message>
    <message>
        <source>Not promised: sizes that were not measured, form, strength, fitness for a use.</source>
        <translation>Nicht zugesagt: nicht gemessene Maße, Form, Festigkeit, Eignung für einen Zweck.</translation>
    </message>
    <message>
        <source>Limits</source>
        <translation>Grenzen</translation>
    </message>
    <message>
        <source>machine&apos;s share {axis}, %</source>
        <translation>Anteil der Maschine {axis}, %</translation>
    </message>
    <message>
        <source>shrinkage {axis}, %</source>
        <translation>Schwindung {axis}, %</translation>
    </message>
    <message>
        <source>Axis {axis}. Trials: {count}; machines: {machines}; lots: {lots}.</source>
        <translation>Achse {axis}. Versuche: {count}; Maschinen: {machines}; Chargen: {lots}.</translation>
    </message>
    <message>
        <source>Bars: 95 %. Pale bar: expected before any print. Dotted ring: too few prints to know better. Lines: who printed what.</source>
        <translation>Balken: 95 %. Blass: vor jedem Druck erwartet. Punktring: noch zu wenige Drucke, um es besser zu wissen. Linien: wer was gedruckt hat.</translation>
    </message>
    <message>
        <source>{says} They fall into {islands} islands that share no print.</source>
        <translation>{says} Sie zerfallen in {islands} Inseln, die keinen Druck gemeinsam haben.</translation>
    </message>
    <message>
        <source>{says} {share}.</source>
        <translation>{says} {share}.</translation>
    </message>
    <message>
        <source>{name}: {share} %</source>
        <translation>{name}: {share} %</translation>
    </message>
    <message>
        <source>{says}, mostly what was known before any print</source>
        <translation>{says}, überwiegend Vorwissen vor jedem Druck</translation>
    </message>
    <message>
        <source>{says}; island {number}, not linked with the first</source>
        <translation>{says}; Insel {number}, nicht mit der ersten verbunden</translation>
    </message>
    <message>
        <source>machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>lot</source>
        <translation>Charge</translation>
    </message>
    <message>
        <source>The machine&apos;s share is mostly its drive&apos;s tolerance: the prints say little of it yet.</source>
        <translation>Der Anteil der Maschine ist überwiegend die Toleranz ihres Antriebs: Die Drucke sagen noch wenig darüber.</translation>
    </message>
    <message>
        <source>№ {numbers}: {reason}</source>
        <translation>№ {numbers}: {reason}</translation>
    </message>
    <message>
        <source>Not counted: {trials}.</source>
        <translation>Nicht gezählt: {trials}.</translation>
    </message>
    <message>
        <source>not told yet</source>
        <translation>noch nicht bestimmt</translation>
    </message>
    <message>
        <source>Read next</source>
        <translation>Als Nächstes messen</translation>
    </message>
    <message>
        <source>{length:.2f} ± {half:.2f} mm</source>
        <translation>{length:.2f} ± {half:.2f} mm</translation>
    </message>
    <message>
        <source>commanded position, mm</source>
        <translation>befohlene Position, mm</translation>
    </message>
    <message>
        <source>Error against length</source>
        <translation>Abweichung über der Länge</translation>
    </message>
    <message>
        <source>closed outline</source>
        <translation>geschlossener Umriss</translation>
    </message>
    <message>
        <source>excluded</source>
        <translation>ausgeschlossen</translation>
    </message>
    <message>
        <source>Excluded: {reason}</source>
        <translation>Ausgeschlossen: {reason}</translation>
    </message>
    <message>
        <source>{name}: nominal {nominal} mm, read {reading} mm, error {error} mm, off the line by {rest} mm</source>
        <translation>{name}: Nennmaß {nominal} mm, gemessen {reading} mm, Abweichung {error} mm, Abstand zur Geraden {rest} mm</translation>
    </message>
    <message>
        <source>{kind}, slope {scale}</source>
        <translation>{kind}, Steigung {scale}</translation>
    </message>
    <message>
        <source>not told</source>
        <translation>nicht bestimmt</translation>
    </message>
    <message>
        <source>same-facing</source>
        <translation>gleichgerichtet</translation>
    </message>
    <message>
        <source>bosses</source>
        <translation>Außenzylinder</translation>
    </message>
    <message>
        <source>bores</source>
        <translation>Bohrungen</translation>
    </message>
    <message>
        <source>heights</source>
        <translation>Höhen</translation>
    </message>
    <message>
        <source>travel</source>
        <translation>Verfahrweg</translation>
    </message>
    <message>
        <source>first layers</source>
        <translation>erste Schichten</translation>
    </message>
    <message>
        <source>if the steps were corrected from {length} mm</source>
        <translation>wenn die Schritte anhand von {length} mm korrigiert würden</translation>
    </message>
    <message>
        <source>small-piece correction</source>
        <translation>Kleinteilkorrektur</translation>
    </message>
    <message>
        <source>± {tolerance} mm</source>
        <translation>± {tolerance} mm</translation>
    </message>
    <message>
        <source>Readings along {axis}: {count}; scale error {slope}.</source>
        <translation>Messwerte entlang {axis}: {count}; Maßstabsfehler {slope}.</translation>
    </message>
    <message>
        <source>Gauge</source>
        <translation>Messstelle</translation>
    </message>
    <message>
        <source>Axis</source>
        <translation>Achse</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>Nominal mm</source>
        <translation>Nennmaß mm</translation>
    </message>
    <message>
        <source>Error mm</source>
        <translation>Abw. mm</translation>
    </message>
    <message>
        <source>Expected mm</source>
        <translation>Erwartet mm</translation>
    </message>
    <message>
        <source>kind</source>
        <translation>die Art</translation>
    </message>
    <message>
        <source>axis</source>
        <translation>die Achse</translation>
    </message>
    <message>
        <source>Row {row}: choose the {what}.</source>
        <translation>Zeile {row}: {what} wählen.</translation>
    </message>
    <message>
        <source>{kind} {axis} {length}</source>
        <translation>{kind} {axis} {length}</translation>
    </message>
    <message>
        <source>Upright mark: the whole error, with U of what is explained. Empty: unexplained.</source>
        <translation>Senkrechter Strich: die ganze Abweichung mit U des erklärten Teils. Leer: unerklärt.</translation>
    </message>
    <message>
        <source>gets worse</source>
        <translation>wird schlechter</translation>
    </message>
    <message>
        <source>The change improves the worst part ({part}) with a probability of {percent}.</source>
        <translation>Die Änderung verbessert das schlechteste Teil ({part}) mit einer Wahrscheinlichkeit von {percent}.</translation>
    </message>
    <message>
        <source>more than {percent:.0f} %</source>
        <translation>mehr als {percent:.0f} %</translation>
    </message>
    <message>
        <source>less than {percent:.0f} %</source>
        <translation>weniger als {percent:.0f} %</translation>
    </message>
    <message>
        <source>{percent:.0f} %</source>
        <translation>{percent:.0f} %</translation>
    </message>
    <message>
        <source>The change that this trial advises takes {part} from {before} ± {U} mm to {after} ± {U} mm.</source>
        <translation>Die Änderung, zu der dieser Versuch rät, bringt {part} von {before} ± {U} mm auf {after} ± {U} mm.</translation>
    </message>
    <message>
        <source>Stop meter</source>
        <translation>Stoppanzeige</translation>
    </message>
    <message>
        <source>Features: {count}, causes: {causes}. Largest error, {largest}.</source>
        <translation>Merkmale: {count}, Ursachen: {causes}. Größte Abweichung: {largest}.</translation>
    </message>
    <message>
        <source>These parts get worse by the change: {names}.</source>
        <translation>Diese Teile werden durch die Änderung schlechter: {names}.</translation>
    </message>
    <message>
        <source>This trial does not tell these parts of the list: {names}.</source>
        <translation>Dieser Versuch sagt nichts über diese Teile der Liste: {names}.</translation>
    </message>
    <message>
        <source>Advised</source>
        <translation>Empfohlen</translation>
    </message>
    <message>
        <source>With {name} (steps × {factor:.5f}) {part} would go from {before} ± {U} mm to {after} ± {U} mm; of a filament that does not shrink it would then be {other} ± {U_other} mm off.</source>
        <translation>Wäre „{name}“ gewählt (Schritte × {factor:.5f}), ginge {part} von {before} ± {U} mm auf {after} ± {U} mm; aus einem Filament, das nicht schwindet, wäre die Abweichung dann {other} ± {U_other} mm.</translation>
    </message>
    <message>
        <source>A wrong move</source>
        <translation>Ein falscher Schritt</translation>
    </message>
    <message>
        <source>! {quantity} moved</source>
        <translation>! {quantity} verändert</translation>
    </message>
    <message>
        <source>quiet</source>
        <translation>ruhig</translation>
    </message>
    <message>
        <source>Type the words of the note first.</source>
        <translation>Erst den Text der Notiz eingeben.</translation>
    </message>
    <message>
        <source>checked by a later trial</source>
        <translation>durch einen späteren Versuch geprüft</translation>
    </message>
    <message>
        <source>not checked yet</source>
        <translation>noch nicht geprüft</translation>
    </message>
    <message>
        <source>undone</source>
        <translation>rückgängig gemacht</translation>
    </message>
    <message>
        <source>not attributable</source>
        <translation>nicht zuzuordnen</translation>
    </message>
    <message>
        <source>tone of belt X</source>
        <translation>Ton des Riemens X</translation>
    </message>
    <message>
        <source>tone of belt Y</source>
        <translation>Ton des Riemens Y</translation>
    </message>
    <message>
        <source>free span</source>
        <translation>freie Länge</translation>
    </message>
    <message>
        <source>mass of the belt</source>
        <translation>Masse des Riemens</translation>
    </message>
    <message>
        <source>tension of belt X</source>
        <translation>Spannung des Riemens X</translation>
    </message>
    <message>
        <source>tension of belt Y</source>
        <translation>Spannung des Riemens Y</translation>
    </message>
    <message>
        <source>commanded</source>
        <translation>befohlen</translation>
    </message>
    <message>
        <source>read on the rule</source>
        <translation>am Lineal abgelesen</translation>
    </message>
    <message>
        <source>nobody named</source>
        <translation>niemand genannt</translation>
    </message>
    <message>
        <source>Trial {number}</source>
        <translation>Versuch {number}</translation>
    </message>
    <message>
        <source>Withdrawn</source>
        <translation>Zurückgezogen</translation>
    </message>
    <message>
        <source>In force when it was begun</source>
        <translation>Gültig, als er begonnen wurde</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>Against trial {number}</source>
        <translation>Gegenüber Versuch {number}</translation>
    </message>
    <message>
        <source>They have no result in common.</source>
        <translation>Sie haben kein gemeinsames Ergebnis.</translation>
    </message>
    <message>
        <source>Nothing moved beyond its uncertainty.</source>
        <translation>Nichts hat sich über seine Unsicherheit hinaus verändert.</translation>
    </message>
    <message>
        <source>Moved: {results}.</source>
        <translation>Verändert: {results}.</translation>
    </message>
    <message>
        <source>unknown</source>
        <translation>unbekannt</translation>
    </message>
    <message>
        <source>{old} → {new}</source>
        <translation>{old} → {new}</translation>
    </message>
    <message>
        <source>trial {number}</source>
        <translation>Versuch {number}</translation>
    </message>
    <message>
        <source>set by hand</source>
        <translation>von Hand gesetzt</translation>
    </message>
    <message>
        <source>When its trial was begun {held} was in force, and not what it started from.</source>
        <translation>Als sein Versuch begonnen wurde, war {held} gültig und nicht der Wert, von dem er ausging.</translation>
    </message>
    <message>
        <source>Checked</source>
        <translation>Geprüft</translation>
    </message>
    <message>
        <source>by trial {number}</source>
        <translation>durch Versuch {number}</translation>
    </message>
    <message>
        <source>in force now</source>
        <translation>jetzt gültig</translation>
    </message>
    <message>
        <source>another value took its place</source>
        <translation>durch einen anderen Wert ersetzt</translation>
    </message>
    <message>
        <source>together with {others}: nothing that tells was read between them. {would_tell}</source>
        <translation>zusammen mit {others}: dazwischen wurde nichts gemessen, was es verrät. {would_tell}</translation>
    </message>
    <message>
        <source>Counts no more: it was taken back.</source>
        <translation>Zählt nicht mehr: Es wurde zurückgenommen.</translation>
    </message>
    <message>
        <source>{name} is larger than {most} pixels a side; make it smaller.</source>
        <translation>{name} hat mehr als {most} Bildpunkte je Seite; bitte verkleinern.</translation>
    </message>
    <message>
        <source>{name} is no picture that can be read here; choose a JPEG or PNG file.</source>
        <translation>{name} ist kein Bild, das hier gelesen werden kann; eine JPEG- oder PNG-Datei wählen.</translation>
    </message>
    <message>
        <source>The listing agrees with what is in force. Values compared: {count}.</source>
        <translation>Die Auflistung stimmt mit dem Gültigen überein. Verglichene Werte: {count}.</translation>
    </message>
    <message>
        <source>from the parts list</source>
        <translation>aus der Teileliste</translation>
    </message>
    <message>
        <source>machines {count}</source>
        <translation>Maschinen {count}</translation>
    </message>
    <message>
        <source>lots {count}</source>
        <translation>Chargen {count}</translation>
    </message>
    <message>
        <source>instruments {count}</source>
        <translation>Messmittel {count}</translation>
    </message>
    <message>
        <source>trials {count}</source>
        <translation>Versuche {count}</translation>
    </message>
    <message>
        <source>events {count}</source>
        <translation>Ereignisse {count}</translation>
    </message>
    <message>
        <source>pictures {count}</source>
        <translation>Bilder {count}</translation>
    </message>
    <message>
        <source>Newest trial: {number}, {subject} on {machine}, {moment}</source>
        <translation>Neuester Versuch: {number}, {subject} an {machine}, {moment}</translation>
    </message>
    <message>
        <source>Newest trial: {number}, {subject}, {moment}</source>
        <translation>Neuester Versuch: {number}, {subject}, {moment}</translation>
    </message>
    <message>
        <source>Nothing was imported. Mend these lines, then try again.</source>
        <translation>Nichts wurde eingelesen. Diese Zeilen berichtigen, dann erneut versuchen.</translation>
    </message>
    <message>
        <source>Nothing was added; {already} rows are on record already.</source>
        <translation>Nichts wurde hinzugefügt; {already} Zeilen sind schon erfasst.</translation>
    </message>
    <message>
        <source>Added: {added}. On record already: {already} rows.</source>
        <translation>Hinzugefügt: {added}. Schon erfasst: {already} Zeilen.</translation>
    </message>
    <message>
        <source>Choose a machine above.</source>
        <translation>Oben eine Maschine wählen.</translation>
    </message>
    <message>
        <source>Say what is wrong; it stays with the step until it is mended.</source>
        <translation>Sagen, was nicht stimmt; es bleibt bei dem Schritt, bis es behoben ist.</translation>
    </message>
    <message>
        <source>Say what was read; a check without a reading is none.</source>
        <translation>Sagen, was abgelesen wurde; eine Prüfung ohne Ablesung ist keine.</translation>
    </message>
    <message>
        <source>Say why it is skipped; the reason stands beside the step.</source>
        <translation>Sagen, warum er übersprungen wird; der Grund steht neben dem Schritt.</translation>
    </message>
    <message>
        <source>First: {steps}.</source>
        <translation>Zuerst: {steps}.</translation>
    </message>
    <message>
        <source>Reason: {reason}</source>
        <translation>Grund: {reason}</translation>
    </message>
    <message>
        <source>checked by {name}</source>
        <translation>geprüft von {name}</translation>
    </message>
    <message>
        <source>done</source>
        <translation>erledigt</translation>
    </message>
    <message>
        <source>stale</source>
        <translation>veraltet</translation>
    </message>
    <message>
        <source>in doubt</source>
        <translation>zweifelhaft</translation>
    </message>
    <message>
        <source>next</source>
        <translation>als Nächstes</translation>
    </message>
    <message>
        <source>not yet</source>
        <translation>noch nicht</translation>
    </message>
    <message>
        <source>skipped</source>
        <translation>übersprungen</translation>
    </message>
    <message>
        <source>{stand} of {steps} steps stand.</source>
        <translation>{stand} von {steps} Schritten stehen.</translation>
    </message>
    <message>
        <source>Next: {step}.</source>
        <translation>Als Nächstes: {step}.</translation>
    </message>
    <message>
        <source>The machine is verified.</source>
        <translation>Die Maschine ist verifiziert.</translation>
    </message>
    <message>
        <source>Kept trials are not changed.</source>
        <translation>Behaltene Versuche werden nicht geändert.</translation>
    </message>
    <message>
        <source>machine, lot</source>
        <translation>Maschine, Charge</translation>
    </message>
    <message>
        <source>none picked</source>
        <translation>nichts gewählt</translation>
    </message>
    <message>
        <source>instrument</source>
        <translation>Messmittel</translation>
    </message>
    <message>
        <source>never checked here</source>
        <translation>hier nie geprüft</translation>
    </message>
    <message>
        <source>found bad, check № {number}, {day}</source>
        <translation>für schlecht befunden, Prüfung № {number}, {day}</translation>
    </message>
    <message>
        <source>check № {number}, {day}, is used</source>
        <translation>Prüfung № {number}, {day}, gilt</translation>
    </message>
    <message>
        <source>k {k:.2f}, ν {nu}</source>
        <translation>k&#xa0;{k:.2f}, ν&#xa0;{nu}</translation>
    </message>
    <message>
        <source>many</source>
        <translation>viele</translation>
    </message>
    <message>
        <source>Kept by {name}.</source>
        <translation>Behalten von {name}.</translation>
    </message>
    <message>
        <source>“{text}” is not a number; type for example 12.5 or 12,5, without thousands separators.</source>
        <translation>„{text}“ ist keine Zahl; zum Beispiel 12,5 oder 12.5 eingeben, ohne Tausendertrennzeichen.</translation>
    </message>
    <message>
        <source>{value} is too small: at least {limit}.</source>
        <translation>{value} ist zu klein: mindestens {limit}.</translation>
    </message>
    <message>
        <source>{value} is too large: at most {limit}.</source>
        <translation>{value} ist zu groß: höchstens {limit}.</translation>
    </message>
    <message>
        <source>“{text}” is not offered here; choose one of {offered}.</source>
        <translation>„{text}“ steht hier nicht zur Wahl; eines von {offered} wählen.</translation>
    </message>
    <message>
        <source>Row {row}: “{text}” lies right of the last column; paste further left.</source>
        <translation>Zeile {row}: „{text}“ liegt rechts der letzten Spalte; weiter links einfügen.</translation>
    </message>
    <message>
        <source>Row {row}, {column}: {says}</source>
        <translation>Zeile {row}, {column}: {says}</translation>
    </message>
    <message>
        <source>this column cannot be changed.</source>
        <translation>diese Spalte lässt sich nicht ändern.</translation>
    </message>
    <message>
        <source>Water at {water:g} °C: the formula holds from 0 to 40 °C. Let it come to room temperature.</source>
        <translation>Wasser bei {water:g} °C: Die Formel gilt von 0 bis 40 °C. Auf Raumtemperatur kommen lassen.</translation>
    </message>
    <message>
        <source>No sample weighed in air and in water yet.</source>
        <translation>Noch keine Probe in Luft und im Wasser gewogen.</translation>
    </message>
    <message>
        <source>{mass:g} g in air is too little to weigh in water; take 5 to 10 g, at least 1 g.</source>
        <translation>{mass:g} g in Luft sind zu wenig für die Wägung im Wasser; 5 bis 10 g nehmen, mindestens 1 g.</translation>
    </message>
    <message>
        <source>{water:g} g in water is not below {air:g} g in air; were the two swapped?</source>
        <translation>{water:g} g im Wasser liegen nicht unter {air:g} g in Luft; wurden beide vertauscht?</translation>
    </message>
    <message>
        <source>{air:g} g in air and {water:g} g in water would be {density:.3g} g/cm³: check the decimal mark, and wipe bubbles off.</source>
        <translation>{air:g} g in Luft und {water:g} g im Wasser ergäben {density:.3g} g/cm³: Dezimalzeichen prüfen und Blasen abwischen.</translation>
    </message>
    <message>
        <source>A nominal diameter of {nominal:g} mm is not between 1 and 5 mm; type that of the label.</source>
        <translation>Ein Nenndurchmesser von {nominal:g} mm liegt nicht zwischen 1 und 5 mm; den vom Etikett eingeben.</translation>
    </message>
    <message>
        <source>{reading:g} mm read for a filament set to {nominal:g} mm: is it filament of {known:g} mm? Type its nominal, or read again.</source>
        <translation>{reading:g} mm gemessen bei einem auf {nominal:g} mm eingestellten Filament: Ist es Filament mit {known:g} mm? Dessen Nennmaß eingeben oder erneut messen.</translation>
    </message>
    <message>
        <source>Place {place}: {says}</source>
        <translation>Stelle {place}: {says}</translation>
    </message>
    <message>
        <source>{reading:g} mm: with the decimal mark moved it would be {meant:g} mm. Type it again.</source>
        <translation>{reading:g} mm: mit verschobenem Dezimalzeichen wären es {meant:g} mm. Noch einmal eingeben.</translation>
    </message>
    <message>
        <source>{reading:g} mm is no diameter of a filament (0.5 to 5 mm); read it again.</source>
        <translation>{reading:g} mm ist kein Durchmesser eines Filaments (0,5 bis 5 mm); erneut messen.</translation>
    </message>
    <message>
        <source>{reading:g} mm is more than {limit:g} mm from the nominal {nominal:g} mm; read it again, or type another nominal.</source>
        <translation>{reading:g} mm weicht mehr als {limit:g} mm vom Nennmaß {nominal:g} mm ab; erneut messen oder ein anderes Nennmaß eingeben.</translation>
    </message>
    <message>
        <source>Read one way only: turn the filament by 90° and read the same place again. One way alone sets the flow up to 7 % off where it is 1.80 by 1.68 mm.</source>
        <translation>Nur in einer Richtung gemessen: das Filament um 90° drehen und dieselbe Stelle erneut messen. Eine Richtung allein verfälscht den Durchfluss um bis zu 7 %, wenn der Querschnitt 1,80 mal 1,68 mm misst.</translation>
    </message>
    <message>
        <source>One pair tells nothing about the spread along the length: read at least one place more, ten over 2 m are usual.</source>
        <translation>Ein Paar sagt nichts über die Streuung entlang der Länge: mindestens eine weitere Stelle messen, üblich sind zehn auf 2 m.</translation>
    </message>
    <message>
        <source>Place {places} was read one way only and does not count; turn it by 90° and read again.</source>
        <translation>Stelle {places} wurde nur in einer Richtung gemessen und zählt nicht; um 90° drehen und erneut messen.</translation>
    </message>
    <message>
        <source>All readings are equal: please type what the instrument shows, not the label.</source>
        <translation>Alle Messwerte sind gleich: bitte eingeben, was das Messmittel anzeigt, nicht das Etikett.</translation>
    </message>
    <message>
        <source>Places so far: {count}; ten over at least 2 m are usual.</source>
        <translation>Bisher {count} Stellen; üblich sind zehn auf mindestens 2 m.</translation>
    </message>
    <message>
        <source>Re-reading alone shows an ovality of {apparent:.3f} mm with this gauge.</source>
        <translation>Wiederholtes Messen allein zeigt mit diesem Messmittel eine Ovalität von {apparent:.3f} mm.</translation>
    </message>
    <message>
        <source>{after:g} g after drying is more than {before:g} g before; were the two swapped?</source>
        <translation>{after:g} g nach dem Trocknen sind mehr als {before:g} g davor; wurden beide vertauscht?</translation>
    </message>
    <message>
        <source>A loss of {percent:.1f} % is more than any filament takes up; was filament used between the two weighings, or a digit slipped?</source>
        <translation>Ein Verlust von {percent:.1f} % ist mehr, als irgendein Filament aufnimmt; wurde zwischen den Wägungen Filament verbraucht, oder ist eine Ziffer verrutscht?</translation>
    </message>
    <message>
        <source>{value:g} g/m is no mass of a filament; measure it anew.</source>
        <translation>{value:g} g/m ist keine Masse eines Filaments; neu messen.</translation>
    </message>
    <message>
        <source>{spool:g} g is no mass of an empty spool; type it in g, 0 for a coil.</source>
        <translation>{spool:g} g ist keine Masse einer leeren Spule; in g eingeben, 0 für einen Ring.</translation>
    </message>
    <message>
        <source>{mass:g} g is more than 30 kg; type the mass in g.</source>
        <translation>{mass:g} g sind mehr als 30 kg; die Masse in g eingeben.</translation>
    </message>
    <message>
        <source>{mass:g} g is not above the {spool:g} g of the empty spool; type the mass with the spool on.</source>
        <translation>{mass:g} g liegen nicht über den {spool:g} g der leeren Spule; die Masse mit Spule eingeben.</translation>
    </message>
    <message>
        <source>A rest of {rest:g} mm: more than the marked {mark:g} mm would have been drawn in; check which way you measured.</source>
        <translation>Ein Rest von {rest:g} mm: Es wäre mehr als die markierten {mark:g} mm eingezogen worden; prüfen, in welcher Richtung gemessen wurde.</translation>
    </message>
    <message>
        <source>The rest of {rest:g} mm is not below the mark of {mark:g} mm: nothing was drawn in; check which way you measured.</source>
        <translation>Der Rest von {rest:g} mm liegt nicht unter der Marke von {mark:g} mm: Nichts wurde eingezogen; prüfen, in welcher Richtung gemessen wurde.</translation>
    </message>
    <message>
        <source>{value:g} g/m is no filament; 1.75 mm has about 3 g/m. Weigh a metre on the page Diameter.</source>
        <translation>{value:g} g/m ist kein Filament; 1,75 mm hat etwa 3 g/m. Auf der Seite Durchmesser einen Meter wägen.</translation>
    </message>
    <message>
        <source>A strand of {mass:g} g cannot be; weigh it again or leave the row empty.</source>
        <translation>Einen Strang von {mass:g} g kann es nicht geben; erneut wägen oder die Zeile leer lassen.</translation>
    </message>
    <message>
        <source>Every repeat needs the commanded length and what was drawn in.</source>
        <translation>Jede Wiederholung braucht die befohlene Länge und das Eingezogene.</translation>
    </message>
    <message>
        <source>{length:g} mm of filament is not between 0 and 5000 mm; retype it.</source>
        <translation>{length:g} mm Filament liegen nicht zwischen 0 und 5000 mm; neu eingeben.</translation>
    </message>
    <message>
        <source>Type the extruder&apos;s steps per millimetre in force when you measured; they are above 0.</source>
        <translation>Die beim Messen gültigen Schritte/mm des Extruders eingeben; sie liegen über 0.</translation>
    </message>
    <message>
        <source>caliper</source>
        <translation>Messschieber</translation>
    </message>
    <message>
        <source>micrometer</source>
        <translation>Messschraube</translation>
    </message>
    <message>
        <source>No piece weighed yet.</source>
        <translation>Noch kein Stück gewogen.</translation>
    </message>
    <message>
        <source>{value:g} {unit} is not above zero; weigh again.</source>
        <translation>{value:g} {unit} ist nicht größer als null; erneut wägen.</translation>
    </message>
    <message>
        <source>A piece of {length:g} mm is too short to weigh by length; cut 1 m, at least 100 mm.</source>
        <translation>Ein Stück von {length:g} mm ist zu kurz, um über die Länge zu wägen; 1 m ablängen, mindestens 100 mm.</translation>
    </message>
    <message>
        <source>A mass of {mass:g} g is not above zero; weigh again.</source>
        <translation>Eine Masse von {mass:g} g liegt nicht über null; erneut wägen.</translation>
    </message>
    <message>
        <source>{mass:g} g for {length:g} mm would be plastic of {density:.3g} g/cm³ at {nominal:g} mm; check the decimal mark, the length and the nominal.</source>
        <translation>{mass:g} g auf {length:g} mm wären Kunststoff von {density:.3g} g/cm³ bei {nominal:g} mm; Dezimalzeichen, Länge und Nennmaß prüfen.</translation>
    </message>
    <message>
        <source>density</source>
        <translation>Dichte</translation>
    </message>
    <message>
        <source>moulding shrinkage</source>
        <translation>Formschwindung</translation>
    </message>
    <message>
        <source>expansion</source>
        <translation>Ausdehnung</translation>
    </message>
    <message>
        <source>nozzle</source>
        <translation>Düse</translation>
    </message>
    <message>
        <source>bed</source>
        <translation>Bett</translation>
    </message>
    <message>
        <source>drying</source>
        <translation>Trocknen</translation>
    </message>
    <message>
        <source>drying time</source>
        <translation>Trockenzeit</translation>
    </message>
    <message>
        <source>A bore of {bore:g} mm cannot be; type the one stamped on the nozzle.</source>
        <translation>Eine Bohrung von {bore:g} mm kann es nicht geben; die auf der Düse eingeschlagene eingeben.</translation>
    </message>
    <message>
        <source>A nozzle at {value:g} °C feeds nothing; type the temperature shown.</source>
        <translation>Eine Düse mit {value:g} °C fördert nichts; die angezeigte Temperatur eingeben.</translation>
    </message>
    <message>
        <source>{value:g} °C is above this hot end&apos;s stated limit of {limit:g} °C. Refused: a lining gives off toxic fume well above it.</source>
        <translation>{value:g} °C liegen über der angegebenen Grenze dieses Heizkopfs von {limit:g} °C. Abgelehnt: Eine Auskleidung gibt weit darüber giftige Dämpfe ab.</translation>
    </message>
    <message>
        <source>Every repeat under load needs its rate and what was fed.</source>
        <translation>Jede Wiederholung unter Last braucht ihre Rate und das Geförderte.</translation>
    </message>
    <message>
        <source>A rate of {rate:g} mm³/s is not between 0 and 200; retype it, or leave it empty for a repeat without load.</source>
        <translation>Eine Rate von {rate:g} mm³/s liegt nicht zwischen 0 und 200; neu eingeben oder für eine Wiederholung ohne Last leer lassen.</translation>
    </message>
    <message>
        <source>{percent:.0f} % of what was commanded at {rate:g} mm³/s: check which way you measured, and the length commanded.</source>
        <translation>{percent:.0f} % des Befohlenen bei {rate:g} mm³/s: prüfen, in welcher Richtung gemessen wurde und welche Länge befohlen war.</translation>
    </message>
    <message>
        <source>by caliper</source>
        <translation>mit Messschieber</translation>
    </message>
    <message>
        <source>by micrometer</source>
        <translation>mit Messschraube</translation>
    </message>
    <message>
        <source>by balance</source>
        <translation>mit Waage</translation>
    </message>
    <message>
        <source>{way} to ± {U} %{used}</source>
        <translation>{way} auf ± {U} %{used}</translation>
    </message>
    <message>
        <source> (used)</source>
        <translation> (verwendet)</translation>
    </message>
    <message>
        <source>The area is known {caliper}, {micrometer}, {balance}; to tell 0.02 mm from none it takes ± {limit} %.</source>
        <translation>Die Querschnittsfläche ist bekannt: {caliper}, {micrometer}, {balance}; um 0,02 mm von null zu unterscheiden, braucht es ± {limit} %.</translation>
    </message>
    <message>
        <source>obround</source>
        <translation>Langrund</translation>
    </message>
    <message>
        <source>rectangle</source>
        <translation>Rechteck</translation>
    </message>
    <message>
        <source>A bead of {value:g} mm cannot be; type above 0 and at most 20 mm.</source>
        <translation>Eine Raupe von {value:g} mm kann es nicht geben; über 0 und höchstens 20 mm eingeben.</translation>
    </message>
    <message>
        <source>A bead {width:g} mm wide and {height:g} mm high is not pressed flat; the width must be at least the layer height.</source>
        <translation>Eine {width:g} mm breite und {height:g} mm hohe Raupe wird nicht flach gedrückt; die Breite muss mindestens die Schichthöhe sein.</translation>
    </message>
    <message>
        <source>The layer height must be above 0 mm.</source>
        <translation>Die Schichthöhe muss über 0 mm liegen.</translation>
    </message>
    <message>
        <source>{area:.4g} mm² does not fill a bead {height:g} mm high; lower the layer.</source>
        <translation>{area:.4g} mm² füllen keine Raupe von {height:g} mm Höhe; die Schicht niedriger wählen.</translation>
    </message>
    <message>
        <source>A diameter of {value:g} mm cannot be; type it in mm.</source>
        <translation>Einen Durchmesser von {value:g} mm kann es nicht geben; in mm eingeben.</translation>
    </message>
    <message>
        <source>, {ratio:.4g} mm fed a mm</source>
        <translation>, {ratio:.4g} mm Vorschub je mm</translation>
    </message>
    <message>
        <source>Bead {area:.3g} mm², spacing {spacing:.3g} mm{fed}, speed {speed:.0f} mm/s.</source>
        <translation>Raupe {area:.3g} mm², Abstand {spacing:.3g} mm{fed}, Geschwindigkeit {speed:.0f} mm/s.</translation>
    </message>
    <message>
        <source>A bead of {width:g} mm is wider than twice the bore of {bore:g} mm: its edges are not pressed down. Other nozzle?</source>
        <translation>Eine Raupe von {width:g} mm ist breiter als die doppelte Bohrung von {bore:g} mm: Ihre Ränder werden nicht angedrückt. Andere Düse?</translation>
    </message>
    <message>
        <source>A layer of {height:g} mm is above three quarters of the bore of {bore:g} mm: the bead is hardly pressed. Lower layer or other nozzle?</source>
        <translation>Eine Schicht von {height:g} mm liegt über drei Vierteln der Bohrung von {bore:g} mm: Die Raupe wird kaum angedrückt. Niedrigere Schicht oder andere Düse?</translation>
    </message>
    <message>
        <source>The flow ceiling was measured at {tested:g} °C: outside ±5 K of it nothing is told at {used:g} °C. Measure it there.</source>
        <translation>Die Durchflussgrenze wurde bei {tested:g} °C gemessen: Außerhalb von ±5 K davon sagt sie bei {used:g} °C nichts. Dort messen.</translation>
    </message>
    <message>
        <source>This must be above 0; type what was commanded or weighed.</source>
        <translation>Dies muss über 0 liegen; eingeben, was befohlen oder gewogen wurde.</translation>
    </message>
    <message>
        <source>A bead of {area:g} mm² cannot be; check width and height.</source>
        <translation>Eine Raupe von {area:g} mm² kann es nicht geben; Breite und Höhe prüfen.</translation>
    </message>
    <message>
        <source>The share of the ceiling that is used lies between 0 and 1.</source>
        <translation>Der genutzte Anteil der Durchflussgrenze liegt zwischen 0 und 1.</translation>
    </message>
    <message>
        <source>Every strand needs its rate, its mass and its temperature.</source>
        <translation>Jeder Strang braucht seine Rate, seine Masse und seine Temperatur.</translation>
    </message>
    <message>
        <source>A rate of {rate:g} mm³/s is not between 0 and 200; retype it.</source>
        <translation>Eine Rate von {rate:g} mm³/s liegt nicht zwischen 0 und 200; neu eingeben.</translation>
    </message>
    <message>
        <source>{temperature:g} °C is above this hot end&apos;s stated limit of {limit:g} °C. Refused: the lining gives off toxic fume.</source>
        <translation>{temperature:g} °C liegen über der angegebenen Grenze dieses Heizkopfs von {limit:g} °C. Abgelehnt: Die Auskleidung gibt giftige Dämpfe ab.</translation>
    </message>
    <message>
        <source>{percent:.0f} % of the commanded mass at {rate:g} mm³/s: timing, or a strand that stuck; weigh again.</source>
        <translation>{percent:.0f} % der befohlenen Masse bei {rate:g} mm³/s: Zeitfehler oder ein hängen gebliebener Strang; erneut wägen.</translation>
    </message>
    <message>
        <source>Trial {number} is left out: {why}.</source>
        <translation>Versuch {number} ist ausgelassen: {why}.</translation>
    </message>
    <message>
        <source>An estimate without uncertainty cannot be weighed; give its size.</source>
        <translation>Ein Schätzwert ohne Unsicherheit lässt sich nicht gewichten; ihre Größe angeben.</translation>
    </message>
    <message>
        <source>A flow factor is above 0; read again what gave one that is not.</source>
        <translation>Ein Durchflussfaktor liegt über 0; bitte neu ablesen, was einen anderen ergab.</translation>
    </message>
    <message>
        <source>The factor in force is above 0; type 1 for 100 %.</source>
        <translation>Der gültige Faktor liegt über 0; für 100 % eine 1 eingeben.</translation>
    </message>
    <message>
        <source>{method} {change} %</source>
        <translation>{method} {change} %</translation>
    </message>
    <message>
        <source>The trials say: {says} (χ² {chi2:.1f}, limit {limit:.1f}). {why}</source>
        <translation>Die Versuche sagen: {says} (χ² {chi2:.1f}, Grenze {limit:.1f}). {why}</translation>
    </message>
    <message>
        <source>top</source>
        <translation>Deckfelder</translation>
    </message>
    <message>
        <source>The wall reads {excess:.2f} mm too thick for the others: ridges under the jaws. Read at most 5 layers with blade edges.</source>
        <translation>Die Wand misst gegenüber den anderen {excess:.2f} mm zu dick: Wülste unter den Messschenkeln. Mit den Schneiden höchstens 5 Schichten fassen.</translation>
    </message>
    <message>
        <source>The wall reads {excess:.2f} mm too thin for the others: jaws pressed hard, or a place near a corner.</source>
        <translation>Die Wand misst gegenüber den anderen {excess:.2f} mm zu dünn: Messschenkel fest zugedrückt oder eine Stelle nahe einer Ecke.</translation>
    </message>
    <message>
        <source>The piece weighs too much for the others: skirt, purge or strings weighed with it, or the density is higher.</source>
        <translation>Das Stück wiegt gegenüber den anderen zu viel: Schürze, Spülung oder Fäden mitgewogen, oder die Dichte ist höher.</translation>
    </message>
    <message>
        <source>The piece weighs too little for the others: a hollow part or infill, a skirt counted but not weighed, a feed that slips, or a lower density.</source>
        <translation>Das Stück wiegt gegenüber den anderen zu wenig: ein hohles Teil oder Füllung, eine Schürze gezählt, aber nicht gewogen, ein Vorschub mit Schlupf oder eine geringere Dichte.</translation>
    </message>
    <message>
        <source>The pads show ridges too early for the others: nozzle too near the bed, or scored too strictly.</source>
        <translation>Die Felder zeigen gegenüber den anderen zu früh Wülste: Düse zu nah am Bett oder zu streng bewertet.</translation>
    </message>
    <message>
        <source>The pads show gaps too long for the others: lines too far apart, cold plastic, or scored too strictly.</source>
        <translation>Die Felder zeigen gegenüber den anderen zu lange Lücken: Linien zu weit auseinander, kalter Kunststoff oder zu streng bewertet.</translation>
    </message>
    <message>
        <source>A nozzle at {value:g} °C does not print; type the temperature shown.</source>
        <translation>Eine Düse mit {value:g} °C druckt nicht; die angezeigte Temperatur eingeben.</translation>
    </message>
    <message>
        <source>A rate of {value:g} mm³/s is not between 0 and 200; it is bead area times speed.</source>
        <translation>Eine Rate von {value:g} mm³/s liegt nicht zwischen 0 und 200; sie ist Raupenquerschnitt mal Geschwindigkeit.</translation>
    </message>
    <message>
        <source>A flow factor of {value:g} is not between {least:g} and {most:g}; type 1 for 100 %.</source>
        <translation>Ein Durchflussfaktor von {value:g} liegt nicht zwischen {least:g} und {most:g}; für 100 % eine 1 eingeben.</translation>
    </message>
    <message>
        <source>{rate:g} mm³/s is above the flow ceiling of {ceiling:.3g} mm³/s: slip would be taken for flow. Print the trial at half the ceiling.</source>
        <translation>{rate:g} mm³/s liegen über der Durchflussgrenze von {ceiling:.3g} mm³/s: Schlupf würde für Durchfluss gehalten. Den Versuch mit der halben Grenze drucken.</translation>
    </message>
    <message>
        <source>{rate:g} mm³/s is more than half the flow ceiling of {ceiling:.3g} mm³/s: the factor would hide slip. Print the trial slower.</source>
        <translation>{rate:g} mm³/s sind mehr als die halbe Durchflussgrenze von {ceiling:.3g} mm³/s: Der Faktor würde Schlupf verdecken. Den Versuch langsamer drucken.</translation>
    </message>
    <message>
        <source>Holds for {model} beads of {width:g} × {height:g} mm, nozzle {nozzle:g} mm, {temperature:g} °C ± 5 K, up to {rate:g} mm³/s.</source>
        <translation>Gilt für Raupen ({model}) von {width:g} × {height:g} mm, Düse {nozzle:g} mm, {temperature:g} °C ± 5 K, bis {rate:g} mm³/s.</translation>
    </message>
    <message>
        <source>it was found with the {model} model; a factor is not carried between models</source>
        <translation>er wurde mit dem Raupenmodell {model} gefunden; ein Faktor wird nicht zwischen Modellen übertragen</translation>
    </message>
    <message>
        <source>it was found with a nozzle of {bore:g} mm</source>
        <translation>er wurde mit einer Düse von {bore:g} mm gefunden</translation>
    </message>
    <message>
        <source>it was found at {temperature:g} °C</source>
        <translation>er wurde bei {temperature:g} °C gefunden</translation>
    </message>
    <message>
        <source>Tested at {tested:g} °C, used at {used:g} °C: outside ±5 K a flow factor does not hold.</source>
        <translation>Geprüft bei {tested:g} °C, benutzt bei {used:g} °C: Außerhalb von ±5 K gilt ein Durchflussfaktor nicht.</translation>
    </message>
    <message>
        <source>Tested up to {tested:g} mm³/s, used at {used:g} mm³/s: slip grows with the rate.</source>
        <translation>Geprüft bis {tested:g} mm³/s, benutzt bei {used:g} mm³/s: Der Schlupf wächst mit der Rate.</translation>
    </message>
    <message>
        <source>Tested with {tested} beads, used with {used} ones: convert the factor first.</source>
        <translation>Geprüft mit Raupenmodell {tested}, benutzt mit {used}: erst den Faktor umrechnen.</translation>
    </message>
    <message>
        <source>A path of {value:g} mm³ cannot be; add up its filament lengths.</source>
        <translation>Einen Weg von {value:g} mm³ kann es nicht geben; seine Filamentlängen addieren.</translation>
    </message>
    <message>
        <source>{value:g} mm of filament cannot be; add up the lengths of the path.</source>
        <translation>{value:g} mm Filament kann es nicht geben; die Längen des Wegs addieren.</translation>
    </message>
    <message>
        <source>The uncertainty of the balance must be above 0 g; its last digit at least.</source>
        <translation>Die Unsicherheit der Waage muss über 0 g liegen; mindestens ihre letzte Stelle.</translation>
    </message>
    <message>
        <source>Skirt and purge of {value:g} g cannot be; weigh them with the piece.</source>
        <translation>Schürze und Spülung von {value:g} g kann es nicht geben; mit dem Stück wägen.</translation>
    </message>
    <message>
        <source>Weigh a piece first.</source>
        <translation>Erst ein Stück wägen.</translation>
    </message>
    <message>
        <source>{value:g} g cannot be; weigh again or leave the row empty.</source>
        <translation>{value:g} g kann es nicht geben; erneut wägen oder die Zeile leer lassen.</translation>
    </message>
    <message>
        <source>{value:g} g beside {middle:g} g: decimal mark, or another piece? Pieces of one path weigh alike.</source>
        <translation>{value:g} g neben {middle:g} g: Dezimalzeichen oder ein anderes Stück? Stücke aus einem Weg wiegen gleich viel.</translation>
    </message>
    <message>
        <source>Mass {share:.2f} of expected: a hollow part or one with infill? This trial needs single walls or a solid piece, and the volume of its path.</source>
        <translation>Masse {share:.2f} der erwarteten: ein hohles Teil oder eines mit Füllung? Dieser Versuch braucht einfache Wände oder ein volles Stück und das Volumen seines Wegs.</translation>
    </message>
    <message>
        <source>Mass {share:.2f} of expected: several pieces on the balance, or the path of one? Compare path and piece.</source>
        <translation>Masse {share:.2f} der erwarteten: mehrere Stücke auf der Waage oder der Weg nur eines Stücks? Weg und Stück vergleichen.</translation>
    </message>
    <message>
        <source>By mass per length this tests the feed: {length} ± {U_length} m of filament are in a piece, {percent} ± {U_percent} % of what the path commands. A filament diameter set wrong stays hidden: weigh by density.</source>
        <translation>Über die Masse je Länge wird hier der Vorschub geprüft: {length} ± {U_length} m Filament stecken in einem Stück, {percent} ± {U_percent} % dessen, was der Weg befiehlt. Ein falsch eingestellter Filamentdurchmesser bleibt verborgen: über die Dichte wägen.</translation>
    </message>
    <message>
        <source>The balance tells {mean:.3g} g to {share:.1f} % only: print at least {least:.0f} g.</source>
        <translation>Die Waage bestimmt {mean:.3g} g nur auf {share:.1f} %: mindestens {least:.0f} g drucken.</translation>
    </message>
    <message>
        <source>One piece: how far the next would differ is not in the interval.</source>
        <translation>Ein Stück: Wie weit das nächste abweichen würde, steckt nicht im Intervall.</translation>
    </message>
    <message>
        <source>{value:g} g/cm³ is no filament; it lies between 0.3 and 5. Typed in kg/m³?</source>
        <translation>{value:g} g/cm³ ist kein Filament; es liegt zwischen 0,3 und 5. In kg/m³ eingegeben?</translation>
    </message>
    <message>
        <source>{value:g} g/m is no filament; 1.75 mm has about 3 g/m. Weigh a metre.</source>
        <translation>{value:g} g/m ist kein Filament; 1,75 mm hat etwa 3 g/m. Einen Meter wägen.</translation>
    </message>
    <message>
        <source>The mass per length is as typed, taken as right to ± {U} % (common practice, no source): weigh a metre on the page Diameter.</source>
        <translation>Die Masse je Länge ist die eingegebene, als richtig auf ± {U} % angenommen (üblich, ohne Quelle): auf der Seite Durchmesser einen Meter wägen.</translation>
    </message>
    <message>
        <source>The density is as typed, taken as right to ± {U} % (common practice, no source): weigh a sample in water on the page Diameter.</source>
        <translation>Die Dichte ist die eingegebene, als richtig auf ± {U} % angenommen (üblich, ohne Quelle): auf der Seite Durchmesser eine Probe im Wasser wägen.</translation>
    </message>
    <message>
        <source>An uncertainty of {value:g} % is not between 0 and 20 %.</source>
        <translation>Eine Unsicherheit von {value:g} % liegt nicht zwischen 0 und 20 %.</translation>
    </message>
    <message>
        <source>The scores fall with more flow: gaps are below zero, ridges above; check the signs.</source>
        <translation>Die Punkte fallen mit mehr Durchfluss: Lücken liegen unter null, Wülste darüber; Vorzeichen prüfen.</translation>
    </message>
    <message>
        <source>The scores do not rise clearly with the flow; print pads further apart or score them again.</source>
        <translation>Die Punkte steigen nicht deutlich mit dem Durchfluss; Felder mit größeren Abständen drucken oder erneut bewerten.</translation>
    </message>
    <message>
        <source>The scores cross zero at {crossing} %, outside the pads from {low} to {high} %; nothing is read off there. Print pads about it.</source>
        <translation>Die Punkte kreuzen null bei {crossing} %, außerhalb der Felder von {low} bis {high} %; dort wird nichts abgelesen. Felder um diesen Wert drucken.</translation>
    </message>
    <message>
        <source>Every score needs its pad and its judge.</source>
        <translation>Jede Bewertung braucht ihr Feld und ihren Bewerter.</translation>
    </message>
    <message>
        <source>A pad at {value} % is no small change; use −6 to +6 %.</source>
        <translation>Ein Feld mit {value} % ist keine kleine Änderung; −6 bis +6 % verwenden.</translation>
    </message>
    <message>
        <source>A score of {value:g} is not between −5 (gaps) and +5 (ridges).</source>
        <translation>Eine Bewertung von {value:g} liegt nicht zwischen −5 (Lücken) und +5 (Wülste).</translation>
    </message>
    <message>
        <source>Score four different pads at least; a line through fewer proves little.</source>
        <translation>Mindestens vier verschiedene Felder bewerten; eine Gerade durch weniger beweist wenig.</translation>
    </message>
    <message>
        <source>One pair of eyes only: let a second person score the pads, blind.</source>
        <translation>Nur ein Paar Augen: eine zweite Person die Felder blind bewerten lassen.</translation>
    </message>
    <message>
        <source>The judges&apos; zeros lie {apart:.1f} % apart: agree on what a gap is, and score again.</source>
        <translation>Die Nullstellen der Bewerter liegen {apart:.1f} % auseinander: sich einigen, was eine Lücke ist, und erneut bewerten.</translation>
    </message>
    <message>
        <source>A wall box is one or two beads thick; choose one of them.</source>
        <translation>Die Wand eines Kastens ist eine oder zwei Raupen dick; eines davon wählen.</translation>
    </message>
    <message>
        <source>{count} layers under the jaws cannot be; divide the jaw&apos;s length by the layer height.</source>
        <translation>{count} Schichten unter den Messschenkeln kann es nicht geben; die Schenkellänge durch die Schichthöhe teilen.</translation>
    </message>
    <message>
        <source>A spread of layer offsets of {value:g} mm is not between 0 and 0.1; leave it empty if it was not measured.</source>
        <translation>Eine Streuung des Schichtversatzes von {value:g} mm liegt nicht zwischen 0 und 0,1; leer lassen, wenn sie nicht gemessen wurde.</translation>
    </message>
    <message>
        <source>Ridges would make {excess:.3f} mm of these walls, nothing is left; check the layers under the jaws.</source>
        <translation>Wülste würden {excess:.3f} mm dieser Wände ausmachen, nichts bliebe übrig; die Schichten unter den Messschenkeln prüfen.</translation>
    </message>
    <message>
        <source>{wall:g} mm for a wall of {right:.2f} mm: decimal mark, unit, or another feature? Retype it or leave the row empty.</source>
        <translation>{wall:g} mm bei einer Wand von {right:.2f} mm: Dezimalzeichen, Einheit oder eine andere Stelle? Neu eingeben oder die Zeile leer lassen.</translation>
    </message>
    <message>
        <source>One place is not a wall; read eight, four at least, at the middle of faces.</source>
        <translation>Eine Stelle ist keine Wand; acht messen, mindestens vier, in der Mitte der Seiten.</translation>
    </message>
    <message>
        <source>Wall {wall:.2f} mm on a path of {width:g} mm: two beads? Choose the two-bead wall.</source>
        <translation>Wand {wall:.2f} mm auf einem Weg von {width:g} mm: zwei Raupen? Die Wand aus zwei Raupen wählen.</translation>
    </message>
    <message>
        <source>Wall {wall:.2f} mm on paths of {width:g} mm: one bead? Choose the one-bead wall.</source>
        <translation>Wand {wall:.2f} mm auf Wegen von {width:g} mm: eine Raupe? Die Wand aus einer Raupe wählen.</translation>
    </message>
    <message>
        <source>The jaws touch {count} layers: ridges may add {most:.3f} mm. Read with blade edges on at most 5 layers, or trust the mass.</source>
        <translation>Die Messschenkel fassen {count} Schichten: Wülste können bis {most:.3f} mm ausmachen. Mit den Schneiden an höchstens 5 Schichten messen oder der Masse trauen.</translation>
    </message>
    <message>
        <source>Only {count} places: read eight, away from seam and corners.</source>
        <translation>Nur {count} Stellen: acht messen, weg von Naht und Ecken.</translation>
    </message>
    <message>
        <source>A usual caliper is taken, u {u:g} mm (common practice, no source): pick the checked one above.</source>
        <translation>Ein üblicher Messschieber ist angenommen, u {u:g} mm (üblich, ohne Quelle): oben den geprüften wählen.</translation>
    </message>
    <message>
        <source>{because} Read on {basis}.</source>
        <translation>{because} Gemessen an: {basis}.</translation>
    </message>
    <message>
        <source>measure {readings}</source>
        <translation>messen: {readings}</translation>
    </message>
    <message>
        <source>To tell it: {needs}.</source>
        <translation>Um es zu bestimmen: {needs}.</translation>
    </message>
    <message>
        <source>Not told by these readings: {what}.</source>
        <translation>Aus diesen Messwerten nicht bestimmt: {what}.</translation>
    </message>
    <message>
        <source>It falls by {fall} over {count} places.</source>
        <translation>Es fällt um {fall} über {count} Orte.</translation>
    </message>
    <message>
        <source>The bed is level; the screws stay.</source>
        <translation>Das Bett ist ausgerichtet; die Schrauben bleiben.</translation>
    </message>
    <message>
        <source>Probe more places, or touch one place ten times: the tilt is not told from scatter.</source>
        <translation>Mehr Orte antasten oder einen Ort zehnmal: Die Neigung hebt sich nicht von der Streuung ab.</translation>
    </message>
    <message>
        <source>Heat and soak the bed, then probe again. For a first rough setting: {turns}</source>
        <translation>Das Bett heizen und durchwärmen, dann erneut antasten. Für eine erste grobe Einstellung: {turns}</translation>
    </message>
    <message>
        <source>No turn of a screw is told from zero: probe more places, or touch one place ten times.</source>
        <translation>Keine Drehung einer Schraube ist von null zu unterscheiden: mehr Stellen antasten, oder eine Stelle zehnmal.</translation>
    </message>
    <message>
        <source>Name the places of the levelling screws, then their turns are told.</source>
        <translation>Die Orte der Stellschrauben angeben, dann werden ihre Drehungen genannt.</translation>
    </message>
    <message>
        <source>Loosen the fourth screw, level on three, then bring the fourth up until it just touches.</source>
        <translation>Die vierte Schraube lösen, auf dreien ausrichten, dann die vierte anstellen, bis sie eben berührt.</translation>
    </message>
    <message>
        <source>Four screws twist the plate by {twist}; no turn of the others takes that out.</source>
        <translation>Vier Schrauben verwinden die Platte um {twist}; keine Drehung der anderen nimmt das heraus.</translation>
    </message>
    <message>
        <source>The plate is flat enough.</source>
        <translation>Die Platte ist eben genug.</translation>
    </message>
    <message>
        <source>Use one. It bends the bottom of long parts with the bed, by up to as much.</source>
        <translation>Eine verwenden. Sie biegt die Unterseite langer Teile mit dem Bett, um bis zu diesem Betrag.</translation>
    </message>
    <message>
        <source>No screw needs a turn of {least:.0f}° or more; all stay.</source>
        <translation>Keine Schraube braucht eine Drehung von {least:.0f}° oder mehr; alle bleiben.</translation>
    </message>
    <message>
        <source>Seen from above: {list}. Screws that stay: {stay}. Probe again.</source>
        <translation>Von oben gesehen: {list}. Schrauben, die bleiben: {stay}. Erneut antasten.</translation>
    </message>
    <message>
        <source>down</source>
        <translation>senkt</translation>
    </message>
    <message>
        <source>up</source>
        <translation>hebt</translation>
    </message>
    <message>
        <source>screw {number} clockwise {turns} ± {U} turns ({angle:.0f}°), {down}</source>
        <translation>Schraube {number} im Uhrzeigersinn {turns} ± {U} Umdrehungen ({angle:.0f}°), {down}</translation>
    </message>
    <message>
        <source>screw {number} anticlockwise {turns} ± {U} turns ({angle:.0f}°), {down}</source>
        <translation>Schraube {number} gegen den Uhrzeigersinn {turns} ± {U} Umdrehungen ({angle:.0f}°), {down}</translation>
    </message>
    <message>
        <source>Flatness {flat}.</source>
        <translation>Ebenheit {flat}.</translation>
    </message>
    <message>
        <source>Straighten the plate or take another: with a height correction parts would come off bowed by as much.</source>
        <translation>Die Platte richten oder eine andere nehmen: Mit einer Höhenkorrektur kämen Teile um ebenso viel gebogen herunter.</translation>
    </message>
    <message>
        <source>In the last five minutes it moved {drift:.3f} mm ({minutes:.0f} min read).</source>
        <translation>In den letzten fünf Minuten bewegte es sich um {drift:.3f} mm ({minutes:.0f} min gemessen).</translation>
    </message>
    <message>
        <source>No drift is seen: the bed was settled.</source>
        <translation>Keine Drift zu sehen: Das Bett war eingeschwungen.</translation>
    </message>
    <message>
        <source>Let bed and chamber stand for {soak:.0f} min before probing or printing (95 % interval {low:.0f} to {high:.0f}).</source>
        <translation>Bett und Bauraum vor dem Antasten oder Drucken {soak:.0f} min durchwärmen lassen (95-%-Intervall {low:.0f} bis {high:.0f}).</translation>
    </message>
    <message>
        <source>The drift is slow, but its end is not in sight: read on, to {low:.0f} min at least.</source>
        <translation>Die Drift ist langsam, aber ihr Ende nicht in Sicht: weiter messen, mindestens bis {low:.0f} min.</translation>
    </message>
    <message>
        <source>Not settled: read on until five minutes pass with less than 0.01 mm.</source>
        <translation>Nicht eingeschwungen: weiter messen, bis fünf Minuten mit weniger als 0,01 mm vergehen.</translation>
    </message>
    <message>
        <source>Not settled: read on until five minutes pass with less than 0.01 mm (perhaps {low:.0f} to {high:.0f} min).</source>
        <translation>Nicht eingeschwungen: weiter messen, bis fünf Minuten mit weniger als 0,01 mm vergehen (vielleicht {low:.0f} bis {high:.0f} min).</translation>
    </message>
    <message>
        <source>{says}</source>
        <translation>{says}</translation>
    </message>
    <message>
        <source>Z steps, first-layer height: neither levels a bed.</source>
        <translation>Schritte von Z, Höhe der ersten Schicht: Beides richtet kein Bett aus.</translation>
    </message>
    <message>
        <source>A knee is looked for in 5 strands at 4 rates or more for each temperature; extrude more.</source>
        <translation>Ein Knick wird ab 5 Strängen mit 4 Raten je Temperatur gesucht; mehr extrudieren.</translation>
    </message>
    <message>
        <source>Holds for nozzle {nozzle:g} mm, ±5 K.</source>
        <translation>Gilt für Düse {nozzle:g} mm, ±5 K.</translation>
    </message>
    <message>
        <source>{speed} ± {U} mm/s at {temperature:.0f} °C</source>
        <translation>{speed} ± {U} mm/s bei {temperature:.0f} °C</translation>
    </message>
    <message>
        <source>{ceiling} ± {U} mm³/s at {temperature:.0f} °C</source>
        <translation>{ceiling} ± {U} mm³/s bei {temperature:.0f} °C</translation>
    </message>
    <message>
        <source>Delivery falls by 2 % at {ceilings} ({count} strands); {percent:.0f} % of that is used. {holds}</source>
        <translation>Die Lieferung fällt um 2 % bei {ceilings} ({count} Stränge); {percent:.0f} % davon werden genutzt. {holds}</translation>
    </message>
    <message>
        <source>Print this bead at most at {speeds}.</source>
        <translation>Diese Raupe höchstens drucken mit {speeds}.</translation>
    </message>
    <message>
        <source>{speed:.0f} mm/s at {temperature:.0f} °C</source>
        <translation>{speed:.0f} mm/s bei {temperature:.0f} °C</translation>
    </message>
    <message>
        <source>{rate:g} mm³/s at {temperature:.0f} °C</source>
        <translation>{rate:g} mm³/s bei {temperature:.0f} °C</translation>
    </message>
    <message>
        <source>Go on with faster strands; until then print this bead at most at {limits}.</source>
        <translation>Mit schnelleren Strängen weitermachen; bis dahin diese Raupe höchstens drucken mit {limits}.</translation>
    </message>
    <message>
        <source>Up to {rates} no drop of 2 % is proved, so the ceiling is not told. {holds}</source>
        <translation>Bis {rates} ist kein Abfall von 2 % nachgewiesen, die Durchflussgrenze also nicht bestimmt. {holds}</translation>
    </message>
    <message>
        <source>Flow factor: more of it does not melt faster. Never above the hottest temperature tried here.</source>
        <translation>Durchflussfaktor: Mehr davon schmilzt nicht schneller. Nie über die höchste hier versuchte Temperatur.</translation>
    </message>
    <message>
        <source>In a print back pressure lowers the ceiling by some 5 to 15 % (common practice).</source>
        <translation>Beim Drucken senkt Gegendruck die Durchflussgrenze um etwa 5 bis 15 % (Erfahrungswert).</translation>
    </message>
    <message>
        <source>The ceiling changes by {value} ± {U} % for 1 K.</source>
        <translation>Die Durchflussgrenze ändert sich um {value} ± {U} % je 1 K.</translation>
    </message>
    <message>
        <source>The flow factor in force: {says}</source>
        <translation>Der gültige Durchflussfaktor: {says}</translation>
    </message>
    <message>
        <source>{name}: the correction started from {old}, but {held} was in force when the trial was begun. Undo it in the Logbook unless the piece was made with {old}.</source>
        <translation>{name}: Die Korrektur ging von {old} aus, aber bei Beginn des Versuchs war {held} gültig. Im Logbuch rückgängig machen, es sei denn, das Stück wurde mit {old} hergestellt.</translation>
    </message>
    <message>
        <source>In force now: {changes}.</source>
        <translation>Jetzt gültig: {changes}.</translation>
    </message>
    <message>
        <source>read the same piece again with another instrument</source>
        <translation>dasselbe Stück mit einem anderen Messmittel erneut messen</translation>
    </message>
    <message>
        <source>print the same piece again, with the same file and settings, and read it</source>
        <translation>dasselbe Stück mit derselben Datei und denselben Einstellungen erneut drucken und messen</translation>
    </message>
    <message>
        <source>repeat the trial without touching the machine</source>
        <translation>den Versuch wiederholen, ohne die Maschine anzufassen</translation>
    </message>
    <message>
        <source>repeat it on another day, after the same warm-up</source>
        <translation>ihn an einem anderen Tag nach gleichem Aufwärmen wiederholen</translation>
    </message>
    <message>
        <source>read the same places of the filament again with another instrument</source>
        <translation>dieselben Stellen des Filaments mit einem anderen Messmittel erneut messen</translation>
    </message>
    <message>
        <source>read another stretch of the same spool</source>
        <translation>ein anderes Stück derselben Spule messen</translation>
    </message>
    <message>
        <source>weigh and measure the same piece again with other instruments</source>
        <translation>dasselbe Stück mit anderen Messmitteln erneut wägen und messen</translation>
    </message>
    <message>
        <source>Part size, Size error</source>
        <translation>Teilemaß, Maßabweichung</translation>
    </message>
    <message>
        <source>look at the belts of both axes: pitch, teeth, tension, page Drive</source>
        <translation>die Riemen beider Achsen ansehen: Teilung, Zähne, Spannung, Seite Antrieb</translation>
    </message>
    <message>
        <source>look for play: belt, grub screw, slide; page Reversal tells how much</source>
        <translation>nach Spiel suchen: Riemen, Gewindestift, Führung; die Seite Umkehrspanne sagt, wie viel</translation>
    </message>
    <message>
        <source>look at the frame: screws, rails, what it stands on</source>
        <translation>den Rahmen ansehen: Schrauben, Schienen, worauf er steht</translation>
    </message>
    <message>
        <source>look at the bed: clamps, screws, dirt below, time to warm through</source>
        <translation>das Bett ansehen: Klemmen, Schrauben, Schmutz darunter, Zeit zum Durchwärmen</translation>
    </message>
    <message>
        <source>look at the nozzle for wear, then try the flow: pages Wall and Mass</source>
        <translation>die Düse auf Verschleiß ansehen, dann den Durchfluss versuchen: Seiten Wand und Masse</translation>
    </message>
    <message>
        <source>wipe it and check it again</source>
        <translation>es abwischen und erneut prüfen</translation>
    </message>
    <message>
        <source>check it against another reference</source>
        <translation>es gegen ein anderes Normal prüfen</translation>
    </message>
    <message>
        <source>have it looked at, and use another one until then</source>
        <translation>es nachsehen lassen und bis dahin ein anderes verwenden</translation>
    </message>
    <message>
        <source>measure the filament: pages Diameter and Lots, dry or damp</source>
        <translation>das Filament messen: Seiten Durchmesser und Chargen, trocken oder feucht</translation>
    </message>
    <message>
        <source>Part size, Size error, one lot along X and along Y</source>
        <translation>Teilemaß, Maßabweichung, eine Charge entlang X und entlang Y</translation>
    </message>
    <message>
        <source>Machine geometry, Squareness</source>
        <translation>Maschinengeometrie, Rechtwinkligkeit</translation>
    </message>
    <message>
        <source>Machine geometry, Reversal</source>
        <translation>Maschinengeometrie, Umkehrspanne</translation>
    </message>
    <message>
        <source>Machine geometry, Bed plane</source>
        <translation>Maschinengeometrie, Bettebene</translation>
    </message>
    <message>
        <source>Filament, Feed</source>
        <translation>Filament, Vorschub</translation>
    </message>
    <message>
        <source>look at the feed wheel: teeth, pressure, dust</source>
        <translation>das Vorschubrad ansehen: Zähne, Anpressung, Staub</translation>
    </message>
    <message>
        <source>Filament, Diameter</source>
        <translation>Filament, Durchmesser</translation>
    </message>
    <message>
        <source>weigh a length of it: page Lots</source>
        <translation>eine Länge davon wägen: Seite Chargen</translation>
    </message>
    <message>
        <source>Filament, Lots</source>
        <translation>Filament, Chargen</translation>
    </message>
    <message>
        <source>measure its diameter: page Diameter</source>
        <translation>seinen Durchmesser messen: Seite Durchmesser</translation>
    </message>
    <message>
        <source>Flow trials, Wall and Mass</source>
        <translation>Durchflussversuche, Wand und Masse</translation>
    </message>
    <message>
        <source>Bench, Instruments</source>
        <translation>Messplatz, Messmittel</translation>
    </message>
    <message>
        <source>look at what the page that keeps it names</source>
        <translation>ansehen, was die Seite nennt, auf der es behalten wird</translation>
    </message>
    <message>
        <source>the page that keeps it</source>
        <translation>die Seite, auf der es behalten wird</translation>
    </message>
    <message>
        <source>scale error, X less Y</source>
        <translation>Maßstabsfehler, X minus Y</translation>
    </message>
    <message>
        <source>scale error, mean of X and Y</source>
        <translation>Maßstabsfehler, Mittel aus X und Y</translation>
    </message>
    <message>
        <source>{note}</source>
        <translation>{note}</translation>
    </message>
    <message>
        <source>Read the closed windows and the outside of {axis} again, and check their kind.</source>
        <translation>Die geschlossenen Fenster und das Außenmaß von {axis} erneut messen und ihre Art prüfen.</translation>
    </message>
    <message>
        <source>Lost motion {axis} comes out as {value}, below zero, which no machine has.</source>
        <translation>Toter Gang {axis} ergibt sich zu {value}, unter null; das hat keine Maschine.</translation>
    </message>
    <message>
        <source>{axis} axis first: belt tension, grub screw on the flat, slide play, coupling. Then measure again.</source>
        <translation>Erst die Achse {axis}: Riemenspannung, Gewindestift auf der Abflachung, Spiel der Führung, Kupplung. Dann erneut messen.</translation>
    </message>
    <message>
        <source>Steps per millimetre, flow factor, contour offset: none of them mends play.</source>
        <translation>Schritte/mm, Durchflussfaktor, Konturversatz: nichts davon behebt Spiel.</translation>
    </message>
    <message>
        <source>Lost motion {axis} is {value}: closed outlines come out smaller by it, comb teeth do not ({basis}).</source>
        <translation>Toter Gang {axis} beträgt {value}: Geschlossene Umrisse fallen um so viel kleiner aus, Kammzähne nicht ({basis}).</translation>
    </message>
    <message>
        <source>Lost motion {axis}</source>
        <translation>Toter Gang {axis}</translation>
    </message>
    <message>
        <source>{first} and {second}</source>
        <translation>{first} und {second}</translation>
    </message>
    <message>
        <source>Read the outside lengths and closed windows of {axis} again.</source>
        <translation>Außenlängen und geschlossene Fenster von {axis} erneut messen.</translation>
    </message>
    <message>
        <source>Wall outset</source>
        <translation>Wandüberstand</translation>
    </message>
    <message>
        <source>Wall outset per side</source>
        <translation>Wandüberstand je Seite</translation>
    </message>
    <message>
        <source>Walls stand {value} per side proud of the drawing, alike at every length ({basis}).</source>
        <translation>Wände stehen je Seite {value} über die Zeichnung hinaus, bei jeder Länge gleich ({basis}).</translation>
    </message>
    <message>
        <source>Steps per millimetre: a constant error is not a scale.</source>
        <translation>Schritte je Millimeter: Ein konstanter Fehler ist kein Maßstab.</translation>
    </message>
    <message>
        <source>Check the nozzle bore and the bead width in the settings, then the flow: no offset mends so much.</source>
        <translation>Düsenbohrung und Raupenbreite in den Einstellungen prüfen, dann den Durchfluss: So viel behebt kein Versatz.</translation>
    </message>
    <message>
        <source>Make a wall or mass trial first, and set the flow by it.</source>
        <translation>Erst einen Wand- oder Masseversuch machen und den Durchfluss danach einstellen.</translation>
    </message>
    <message>
        <source>Measure the wall of a box along X and along Y; give no common contour offset yet.</source>
        <translation>Die Wand eines Kastens entlang X und entlang Y messen; noch keinen gemeinsamen Konturversatz vorgeben.</translation>
    </message>
    <message>
        <source>The wall outset differs between X and Y: the bead is wider in one direction.</source>
        <translation>Der Wandüberstand ist in X und Y verschieden: Die Raupe ist in einer Richtung breiter.</translation>
    </message>
    <message>
        <source>Change the one in force by {amount} per side.</source>
        <translation>Den gültigen je Seite um {amount} ändern.</translation>
    </message>
    <message>
        <source>When the flow is good: change the one in force by {amount} per side.</source>
        <translation>Wenn der Durchfluss stimmt: den gültigen je Seite um {amount} ändern.</translation>
    </message>
    <message>
        <source>It takes back the wall outset.</source>
        <translation>Das nimmt den Wandüberstand zurück.</translation>
    </message>
    <message>
        <source>A constant {value} along {axis} may be wall outset, lost motion, or both ({basis}).</source>
        <translation>Ein konstanter Anteil {value} entlang {axis} kann Wandüberstand, toter Gang oder beides sein ({basis}).</translation>
    </message>
    <message>
        <source>Do not correct it yet: {needs}.</source>
        <translation>Noch nicht korrigieren: {needs}.</translation>
    </message>
    <message>
        <source>Constant error {axis}</source>
        <translation>Konstanter Fehler {axis}</translation>
    </message>
    <message>
        <source>Constant error of {what}</source>
        <translation>Konstanter Fehler, {what}</translation>
    </message>
    <message>
        <source>Change the drawn diameter of {what} by {amount}.</source>
        <translation>Den gezeichneten Durchmesser ändern, {what}: um {amount}.</translation>
    </message>
    <message>
        <source>All {what} are off by {value}, whatever their size.</source>
        <translation>{what}: alle weichen um {value} ab, gleich welcher Größe.</translation>
    </message>
    <message>
        <source>Steps per millimetre and shrink allowance; the offset of straight walls.</source>
        <translation>Schritte je Millimeter und Schwindzugabe; der Versatz gerader Wände.</translation>
    </message>
    <message>
        <source>First-layer squash</source>
        <translation>Stauchung der ersten Schicht</translation>
    </message>
    <message>
        <source>Change the gap between nozzle and bed by {amount}.</source>
        <translation>Den Spalt zwischen Düse und Bett um {amount} ändern.</translation>
    </message>
    <message>
        <source>Every height is off by {value}: the first layer, not the screw.</source>
        <translation>Jede Höhe weicht um {value} ab: die erste Schicht, nicht die Spindel.</translation>
    </message>
    <message>
        <source>Steps per millimetre of Z.</source>
        <translation>Schritte je Millimeter von Z.</translation>
    </message>
    <message>
        <source>First-layer flare per side</source>
        <translation>Fußwulst der ersten Schicht je Seite</translation>
    </message>
    <message>
        <source>First-layer flare</source>
        <translation>Fußwulst der ersten Schicht</translation>
    </message>
    <message>
        <source>Look for a lifted corner, and read the low and the high gauges again.</source>
        <translation>Nach einer abgehobenen Ecke sehen und die unteren und oberen Messstellen erneut messen.</translation>
    </message>
    <message>
        <source>The first layers come out narrower than the rest by {value} per side.</source>
        <translation>Die ersten Schichten fallen je Seite um {value} schmaler aus als die übrigen.</translation>
    </message>
    <message>
        <source>Widen the gap a little or print on a cooler bed, and read again; else step the lower edge in.</source>
        <translation>Den Spalt etwas vergrößern oder auf kühlerem Bett drucken und erneut messen; sonst die Unterkante zurücksetzen.</translation>
    </message>
    <message>
        <source>The first layers stand {value} per side proud of the walls above ({basis}).</source>
        <translation>Die ersten Schichten stehen je Seite {value} über die Wände darüber hinaus ({basis}).</translation>
    </message>
    <message>
        <source>Contour offset and flow factor: only the first layers are wide.</source>
        <translation>Konturversatz und Durchflussfaktor: Nur die ersten Schichten sind breit.</translation>
    </message>
    <message>
        <source>strings</source>
        <translation>Fäden</translation>
    </message>
    <message>
        <source>bond</source>
        <translation>Haftung</translation>
    </message>
    <message>
        <source>overhang</source>
        <translation>Überhang</translation>
    </message>
    <message>
        <source>snap force</source>
        <translation>Bruchkraft</translation>
    </message>
    <message>
        <source>Snap force of a tab in N, by a luggage scale: one value a piece. May be left out: * skips.</source>
        <translation>Bruchkraft einer Lasche in N mit einer Federwaage: ein Wert je Stück. Darf fehlen: * überspringt.</translation>
    </message>
    <message>
        <source>{name}: one value a piece, in {unit}.</source>
        <translation>{name}: ein Wert je Stück, in {unit}.</translation>
    </message>
    <message>
        <source>Strings between the posts: 0 none, 1 a few hairs, 2 some, 3 many, 4 a web.</source>
        <translation>Fäden zwischen den Säulen: 0 keine, 1 einzelne Härchen, 2 einige, 3 viele, 4 ein Netz.</translation>
    </message>
    <message>
        <source>cleanness</source>
        <translation>Sauberkeit</translation>
    </message>
    <message>
        <source>Strings between the posts: 4 none, 3 a few hairs, 2 some, 1 many, 0 a web.</source>
        <translation>Fäden zwischen den Säulen: 4 keine, 3 einzelne Haare, 2 einige, 1 viele, 0 ein Gespinst.</translation>
    </message>
    <message>
        <source>Bond, by snapping a tab: 4 as strong as solid, 3 breaks across layers, 2 partly, 1 between layers, 0 falls apart.</source>
        <translation>Haftung, durch Abbrechen einer Lasche: 4 fest wie voll, 3 bricht quer durch Schichten, 2 teilweise, 1 zwischen den Schichten, 0 fällt auseinander.</translation>
    </message>
    <message>
        <source>Overhang and bridge: 4 clean, 3 faint lines, 2 sags, 1 loops, 0 fallen in. May be left out: * skips.</source>
        <translation>Überhang und Brücke: 4 sauber, 3 schwache Linien, 2 hängt durch, 1 Schlaufen, 0 eingefallen. Darf fehlen: * überspringt.</translation>
    </message>
    <message>
        <source>{name}: 0 none, 4 very much.</source>
        <translation>{name}: 0 nichts, 4 sehr viel.</translation>
    </message>
    <message>
        <source>{name}: 4 without fault, 0 useless.</source>
        <translation>{name}: 4 ohne Fehler, 0 unbrauchbar.</translation>
    </message>
    <message>
        <source>{name} {low} to {high}</source>
        <translation>{name} {low} bis {high}</translation>
    </message>
    <message>
        <source>{name} {score} or more</source>
        <translation>{name} {score} oder mehr</translation>
    </message>
    <message>
        <source>{name} {score} or less</source>
        <translation>{name} {score} oder weniger</translation>
    </message>
    <message>
        <source>{value:.4g} {unit}, {name}</source>
        <translation>{value:.4g} {unit}, {name}</translation>
    </message>
    <message>
        <source>{score:.1f} ({low:.1f} to {high:.1f})</source>
        <translation>{score:.1f} ({low:.1f} bis {high:.1f})</translation>
    </message>
    <message>
        <source>met: {percent:.0f} %</source>
        <translation>erfüllt: {percent:.0f} %</translation>
    </message>
    <message>
        <source>No score of {name} yet; it decides, so score it for every piece.</source>
        <translation>Noch keine Bewertung: {name}. Sie entscheidet, also jedes Stück danach bewerten.</translation>
    </message>
    <message>
        <source>One pair of eyes only for {name}: let a second person score it, blind.</source>
        <translation>Nur ein Augenpaar ({name}): eine zweite Person bewerten lassen, blind.</translation>
    </message>
    <message>
        <source>All other settings: a ladder says something only while one setting changes.</source>
        <translation>Alle anderen Einstellungen: Eine Leiter sagt nur etwas, solange sich eine Einstellung ändert.</translation>
    </message>
    <message>
        <source>for this lot on this machine</source>
        <translation>für diese Charge auf dieser Maschine</translation>
    </message>
    <message>
        <source>on this machine</source>
        <translation>auf dieser Maschine</translation>
    </message>
    <message>
        <source>Use {value:.4g} {unit} {where}.</source>
        <translation>{value:.4g} {unit} {where} verwenden.</translation>
    </message>
    <message>
        <source>upper third</source>
        <translation>das obere Drittel</translation>
    </message>
    <message>
        <source>middle</source>
        <translation>die Mitte</translation>
    </message>
    <message>
        <source>It is the {place} of the plateau, {low:g} to {high:g} {unit}, where all is met: {bounds}. That it meets all is sure to {percent:.0f} %; the place lies between {first:.4g} and {last:.4g} {unit} (95 %).</source>
        <translation>Es ist {place} des Plateaus von {low:g} bis {high:g} {unit}, auf dem alles erfüllt ist: {bounds}. Dass dort alles erfüllt ist, ist zu {percent:.0f} % sicher; die Stelle liegt zwischen {first:.4g} und {last:.4g} {unit} (95 %).</translation>
    </message>
    <message>
        <source>No difference seen: keep what is set; every step from {low:g} to {high:g} {unit} does.</source>
        <translation>Kein Unterschied zu sehen: Eingestelltes belassen; jede Stufe von {low:g} bis {high:g} {unit} taugt.</translation>
    </message>
    <message>
        <source>No difference seen: keep what is set, or try wider steps and more specimens.</source>
        <translation>Kein Unterschied zu sehen: belassen, was eingestellt ist, oder weitere Stufen und mehr Probestücke versuchen.</translation>
    </message>
    <message>
        <source>Chance alone makes the steps differ so in {percent:.0f} % of shuffles.</source>
        <translation>Der Zufall allein macht die Stufen in {percent:.0f} % der Vertauschungen so verschieden.</translation>
    </message>
    <message>
        <source>{value:.4g} {unit} is meant, but that it meets all ({bounds}) is sure to {percent:.0f} % only.</source>
        <translation>Gemeint sind {value:.4g} {unit}, aber dass dort alles erfüllt ist ({bounds}), ist nur zu {percent:.0f} % sicher.</translation>
    </message>
    <message>
        <source>Print and score another set of pieces: these are too few.</source>
        <translation>Einen weiteren Satz Stücke drucken und bewerten: Diese sind zu wenige.</translation>
    </message>
    <message>
        <source>The best is at the end, {end:g} {unit}, and nothing lies beyond it: try finer steps next to it.</source>
        <translation>Das Beste liegt am Ende, {end:g} {unit}, und dahinter kommt nichts: feinere Stufen daneben versuchen.</translation>
    </message>
    <message>
        <source>The best is at the end, {end:g} {unit}: extend the ladder beyond it before using it.</source>
        <translation>Das Beste liegt am Ende, {end:g} {unit}: die Leiter darüber hinaus verlängern, bevor es verwendet wird.</translation>
    </message>
    <message>
        <source>What was not tried is not known; nothing is read off there.</source>
        <translation>Was nicht versucht wurde, ist nicht bekannt; dort wird nichts abgelesen.</translation>
    </message>
    <message>
        <source>{bound}: at {steps}</source>
        <translation>{bound}: bei {steps}</translation>
    </message>
    <message>
        <source>{bound}: at no step</source>
        <translation>{bound}: bei keiner Stufe</translation>
    </message>
    <message>
        <source>{told} {unit}.</source>
        <translation>{told} {unit}.</translation>
    </message>
    <message>
        <source>No step meets all that is asked: look for another cause, or extend the ladder.</source>
        <translation>Keine Stufe erfüllt alles, was verlangt ist: eine andere Ursache suchen oder die Leiter verlängern.</translation>
    </message>
    <message>
        <source>No step bonds well enough: extend the ladder to hotter steps, within the machine&apos;s limit.</source>
        <translation>Keine Stufe haftet gut genug: die Leiter zu heißeren Stufen verlängern, innerhalb der Grenze der Maschine.</translation>
    </message>
    <message>
        <source>No step bonds well enough, and nothing hotter may be tried: print slower or with less fan, then repeat it.</source>
        <translation>Keine Stufe haftet gut genug, und heißer darf nicht versucht werden: langsamer oder mit weniger Lüfter drucken, dann wiederholen.</translation>
    </message>
    <message>
        <source>No step meets all. Weigh the lot, dry it, weigh again (page Lots): if it loses mass it was wet, and this ladder printed again with dry filament would tell.</source>
        <translation>Keine Stufe erfüllt alles. Die Charge wägen, trocknen, wieder wägen (Seite Chargen): verliert sie Masse, war sie feucht, und diese Leiter, mit trockenem Filament noch einmal gedruckt, gäbe Auskunft.</translation>
    </message>
    <message>
        <source>The machine&apos;s limit is not typed yet, so it is not watched here.</source>
        <translation>Die Grenze der Maschine ist noch nicht eingegeben und wird hier daher nicht überwacht.</translation>
    </message>
    <message>
        <source>The plateau may go on beyond the steps tried.</source>
        <translation>Das Plateau kann über die versuchten Stufen hinausreichen.</translation>
    </message>
    <message>
        <source>One piece of each step: what differs may be the piece and not the step; another set would tell.</source>
        <translation>Von jeder Stufe ein Stück: Der Unterschied kann am Stück liegen und nicht an der Stufe; ein weiterer Satz gäbe Auskunft.</translation>
    </message>
    <message>
        <source>At {step:g} {unit}, on the plateau too, {name} scores {better:.1f} instead of {score:.1f}.</source>
        <translation>Bei {step:g} {unit}, auch auf dem Plateau, ist die Bewertung {better:.1f} statt {score:.1f} ({name}).</translation>
    </message>
    <message>
        <source>The {name} is greatest at {value:.4g} {unit} ({low:.4g} to {high:.4g}, 95 %).</source>
        <translation>Am größten bei {value:.4g} {unit} ({low:.4g} bis {high:.4g}, 95 %): {name}.</translation>
    </message>
    <message>
        <source>The {name} still rises at the last step.</source>
        <translation>Steigt bei der letzten Stufe noch: {name}.</translation>
    </message>
    <message>
        <source>Where the {name} is greatest cannot be told from these steps.</source>
        <translation>Wo der größte Wert liegt, lässt sich aus diesen Stufen nicht sagen: {name}.</translation>
    </message>
    <message>
        <source>Trial {number} gives {value}.</source>
        <translation>Versuch {number} ergibt {value}.</translation>
    </message>
    <message>
        <source>That is within its uncertainty: change nothing.</source>
        <translation>Das liegt innerhalb seiner Unsicherheit: nichts ändern.</translation>
    </message>
    <message>
        <source>The correction from it is in force already: print and read a new piece.</source>
        <translation>Die Korrektur daraus ist schon gültig: ein neues Stück drucken und messen.</translation>
    </message>
    <message>
        <source>{base} was in force when its piece was made and was changed since: the correction starts from {base}, and the piece says nothing of {now}. Print a new piece rather.</source>
        <translation>{base} war gültig, als das Stück entstand, und wurde seither geändert: Die Korrektur geht von {base} aus, und das Stück sagt nichts über {now}. Besser ein neues Stück drucken.</translation>
    </message>
    <message>
        <source>{value} in trial {number}</source>
        <translation>{value} in Versuch {number}</translation>
    </message>
    <message>
        <source>Proposed: {new}.</source>
        <translation>Vorgeschlagen: {new}.</translation>
    </message>
    <message>
        <source>This setting belongs to a filament lot; choose one above.</source>
        <translation>Diese Einstellung gehört zu einer Filamentcharge; oben eine wählen.</translation>
    </message>
    <message>
        <source>This value is in force already; there is nothing to change.</source>
        <translation>Dieser Wert ist schon gültig; es gibt nichts zu ändern.</translation>
    </message>
    <message>
        <source>Cannot tell yet: nobody wrote down what was set when its piece was made, and a correction starts from there. Look up {name} in the controller or in the slicing program and put that value in force here, unchanged; then print and read a new piece.</source>
        <translation>Lässt sich noch nicht sagen: Niemand hat festgehalten, was eingestellt war, als das Stück entstand, und davon geht eine Korrektur aus. {name} in der Steuerung oder im Slicer nachsehen und diesen Wert hier unverändert in Kraft setzen; dann ein neues Stück drucken und messen.</translation>
    </message>
    <message>
        <source>Cannot tell yet: {now} was written down after its piece was made, and nobody knows what held then. Print and read a new piece.</source>
        <translation>Lässt sich noch nicht sagen: {now} wurde erst festgehalten, als das Stück schon gemacht war, und niemand weiß, was damals galt. Ein neues Stück drucken und messen.</translation>
    </message>
    <message>
        <source>Nobody wrote down yet what is set now.</source>
        <translation>Noch hat niemand notiert, was jetzt eingestellt ist.</translation>
    </message>
    <message>
        <source>Never set here: {now} is taken to hold.</source>
        <translation>Hier nie gesetzt: {now} wird angenommen.</translation>
    </message>
    <message>
        <source>In force: {now}, since {day}.</source>
        <translation>Gültig: {now}, seit {day}.</translation>
    </message>
    <message>
        <source>Without the density a mass tells no diameter: weigh a sample in water.</source>
        <translation>Ohne die Dichte bestimmt eine Masse keinen Durchmesser: eine Probe im Wasser wägen.</translation>
    </message>
    <message>
        <source>A usual {gauge} is taken, u {u:g} mm (common practice, no source): pick the checked one above.</source>
        <translation>Übliches Messmittel angenommen ({gauge}), u {u:g} mm (üblich, ohne Quelle): oben das geprüfte wählen.</translation>
    </message>
    <message>
        <source>Density as usual, {density}, unverified: weigh a sample in water.</source>
        <translation>Dichte wie üblich, {density}, ungeprüft: eine Probe im Wasser wägen.</translation>
    </message>
    <message>
        <source>The density of {found} is far from the usual {known}: bubbles, a sign, or is it filled?</source>
        <translation>Die Dichte von {found} liegt weit vom üblichen Wert {known}: Blasen, ein Vorzeichen, oder ist es gefüllt?</translation>
    </message>
    <message>
        <source>The density of {found} is far from {known} of trial {number}: bubbles, a sign, or another lot?</source>
        <translation>Die Dichte von {found} liegt weit von {known} aus Versuch {number}: Blasen, ein Vorzeichen oder eine andere Charge?</translation>
    </message>
    <message>
        <source>The start text heats: the lap after it is not cold. Keep clear of nozzle and bed.</source>
        <translation>Der Starttext heizt: Die Runde danach ist nicht kalt. Von Düse und Bett fernbleiben.</translation>
    </message>
    <message>
        <source>The bed stays cold, 0 °C: type what this filament wants; leave it for an unheated bed.</source>
        <translation>Das Bett bleibt kalt, 0 °C: eingeben, was dieses Filament verlangt; so lassen, wo das Bett keine Heizung hat.</translation>
    </message>
    <message>
        <source>hot end</source>
        <translation>Heizkopf</translation>
    </message>
    <message>
        <source>{value:g} {unit} is beyond the limit of the {what}, {most:g} {unit}. Lower it.</source>
        <translation>{value:g} {unit} liegen über der Grenze ({what}: {most:g} {unit}). Verringern.</translation>
    </message>
    <message>
        <source>{label}: from {low:g} to {high:g} {unit} can be laid.</source>
        <translation>{label}: von {low:g} bis {high:g} {unit} lässt es sich legen.</translation>
    </message>
    <message>
        <source>{label}: from {low:g} to {high:g} can be laid.</source>
        <translation>{label}: von {low:g} bis {high:g} lässt es sich legen.</translation>
    </message>
    <message>
        <source>The results are in different units; withdraw those in the wrong one.</source>
        <translation>Die Ergebnisse haben verschiedene Einheiten; die in der falschen zurückziehen.</translation>
    </message>
    <message>
        <source>lot {name}</source>
        <translation>Charge {name}</translation>
    </message>
    <message>
        <source>spread σ</source>
        <translation>Streuung σ</translation>
    </message>
    <message>
        <source>upper limit</source>
        <translation>obere Grenze</translation>
    </message>
    <message>
        <source>lower limit</source>
        <translation>untere Grenze</translation>
    </message>
    <message>
        <source>limits from</source>
        <translation>Grenzen aus</translation>
    </message>
    <message>
        <source>{count} results</source>
        <translation>{count} Ergebnissen</translation>
    </message>
    <message>
        <source>Results since the last signal: {count}.</source>
        <translation>Ergebnisse seit dem letzten Signal: {count}.</translation>
    </message>
    <message>
        <source>No signal in {count} results.</source>
        <translation>Kein Signal in {count} Ergebnissen.</translation>
    </message>
    <message>
        <source>The results do not differ at all, so there is no spread to set limits by; read with a finer instrument.</source>
        <translation>Die Ergebnisse unterscheiden sich gar nicht, es gibt also keine Streuung für Grenzen; mit einem feineren Messmittel messen.</translation>
    </message>
    <message>
        <source>Results since the limits began: {count}. Trial limits need {missing} more, firm ones {firm} more.</source>
        <translation>Ergebnisse seit Beginn der Grenzen: {count}. Vorläufige Grenzen brauchen noch {missing}, feste noch {firm}.</translation>
    </message>
    <message>
        <source>Trial limits from {count} results, drawn dashed; {missing} more make them firm.</source>
        <translation>Vorläufige Grenzen aus {count} Ergebnissen, gestrichelt; noch {missing} machen sie fest.</translation>
    </message>
    <message>
        <source>above</source>
        <translation>über</translation>
    </message>
    <message>
        <source>below</source>
        <translation>unter</translation>
    </message>
    <message>
        <source>Two of three results, trials {first} to {last}, are more than two σ {side} the mean.</source>
        <translation>Zwei von drei Ergebnissen, Versuche {first} bis {last}, liegen mehr als zwei σ {side} dem Mittelwert.</translation>
    </message>
    <message>
        <source>Trials {first} to {last}, {count} results in a row, are {side} the mean.</source>
        <translation>Versuche {first} bis {last}, {count} Ergebnisse in Folge, liegen {side} dem Mittelwert.</translation>
    </message>
    <message>
        <source>rise steadily</source>
        <translation>steigen stetig</translation>
    </message>
    <message>
        <source>fall steadily</source>
        <translation>fallen stetig</translation>
    </message>
    <message>
        <source>Trials {first} to {last}, {count} results in a row, {way}.</source>
        <translation>Versuche {first} bis {last}, {count} Ergebnisse in Folge, {way}.</translation>
    </message>
    <message>
        <source>Slow drift: the smoothed mean is {side} its limits from trial {first} to {last}.</source>
        <translation>Langsame Drift: Der geglättete Mittelwert liegt von Versuch {first} bis {last} {side} seinen Grenzen.</translation>
    </message>
    <message>
        <source>Trial {last} gave {value}{unit}, {side} the limit {limit}{unit}.</source>
        <translation>Versuch {last} ergab {value}{unit}, {side} der Grenze {limit}{unit}.</translation>
    </message>
    <message>
        <source>{said} Its own uncertainty reaches back to the limit.</source>
        <translation>{said} Seine eigene Unsicherheit reicht bis an die Grenze zurück.</translation>
    </message>
    <message>
        <source>From trial {before} to trial {last} the result jumps by {jump}{unit}; up to {limit}{unit} is usual.</source>
        <translation>Von Versuch {before} zu Versuch {last} springt das Ergebnis um {jump}{unit}; üblich sind bis zu {limit}{unit}.</translation>
    </message>
    <message>
        <source>For trial {number}, {again}. If it stands, {repeat}. If it comes again, {look}.</source>
        <translation>Zu Versuch {number}: {again}. Bleibt es dabei: {repeat}. Kommt es wieder: {look}.</translation>
    </message>
    <message>
        <source>The mass of the empty spool is needed; weigh one of the same make, and type 0 for a coil without.</source>
        <translation>Die Masse der leeren Spule wird gebraucht; eine gleicher Bauart wägen, für einen Ring ohne Spule 0 eingeben.</translation>
    </message>
    <message>
        <source>Mass per length as claimed and usual, unverified: weigh a metre on the page Diameter.</source>
        <translation>Masse je Länge wie angegeben und üblich, ungeprüft: auf der Seite Durchmesser einen Meter wägen.</translation>
    </message>
    <message>
        <source>How much is left cannot be told: weigh a metre on the page Diameter.</source>
        <translation>Wie viel übrig ist, lässt sich nicht sagen: auf der Seite Durchmesser einen Meter wägen.</translation>
    </message>
    <message>
        <source>Temperature, retraction and flow: moisture looks like all three.</source>
        <translation>Temperatur, Rückzug und Durchfluss: Feuchte sieht wie alle drei aus.</translation>
    </message>
    <message>
        <source>It was wet. Weigh again after two hours more; dry before every ladder and flow trial.</source>
        <translation>Es war feucht. Nach zwei weiteren Stunden erneut wägen; vor jeder Leiter und jedem Durchflussversuch trocknen.</translation>
    </message>
    <message>
        <source>It lost {loss}; above {limit:g} % it was wet.</source>
        <translation>Verlust: {loss}; über {limit:g} % war es feucht.</translation>
    </message>
    <message>
        <source>It lost {loss}; up to {limit:g} % it counts as dry.</source>
        <translation>Verlust: {loss}; bis {limit:g} % gilt es als trocken.</translation>
    </message>
    <message>
        <source>It was dry.</source>
        <translation>Es war trocken.</translation>
    </message>
    <message>
        <source>It lost {loss}; the limit of {limit:g} % lies inside the interval.</source>
        <translation>Verlust: {loss}; die Grenze von {limit:g} % liegt innerhalb des Intervalls.</translation>
    </message>
    <message>
        <source>Dry on, or weigh with a finer balance.</source>
        <translation>Weiter trocknen oder mit einer feineren Waage wägen.</translation>
    </message>
    <message>
        <source>Under load slip depends on the nozzle&apos;s temperature; type the one shown.</source>
        <translation>Unter Last hängt der Schlupf von der Düsentemperatur ab; die angezeigte eingeben.</translation>
    </message>
    <message>
        <source>Keep {old:g} steps/mm until it was fed without load.</source>
        <translation>Bei {old:g} Schritten/mm bleiben, bis ohne Last gefördert wurde.</translation>
    </message>
    <message>
        <source>Under load slip would be booked to the steps.</source>
        <translation>Unter Last würde Schlupf den Schritten angerechnet.</translation>
    </message>
    <message>
        <source>Fed {share} of what was commanded (one repeat).</source>
        <translation>Gefördert: {share} des Befohlenen (eine Wiederholung).</translation>
    </message>
    <message>
        <source>Fed {share} of what was commanded ({count} repeats).</source>
        <translation>Gefördert: {share} des Befohlenen ({count} Wiederholungen).</translation>
    </message>
    <message>
        <source>Flow factor, filament diameter, temperature: they do not feed filament.</source>
        <translation>Durchflussfaktor, Filamentdurchmesser, Temperatur: Sie fördern kein Filament.</translation>
    </message>
    <message>
        <source>{fed} Within 0.5 % nothing is gained by a change.</source>
        <translation>{fed} Innerhalb von 0,5 % bringt eine Änderung nichts.</translation>
    </message>
    <message>
        <source>{because} The interval is wide: feed 200 to 300 mm to be surer.</source>
        <translation>{because} Das Intervall ist breit: 200 bis 300 mm fördern, um sicherer zu sein.</translation>
    </message>
    <message>
        <source>Change nothing.</source>
        <translation>Nichts ändern.</translation>
    </message>
    <message>
        <source>Change the extruder from {old:.6g} to {new} ± {U} steps/mm, then feed again and expect what is commanded.</source>
        <translation>Den Extruder von {old:.6g} auf {new} ± {U} Schritte/mm ändern, dann erneut fördern und das Befohlene erwarten.</translation>
    </message>
    <message>
        <source>Keep {old:.6g} steps/mm and feed twice more: one mark misread would be a change.</source>
        <translation>Bei {old:.6g} Schritten/mm bleiben und noch zweimal fördern: Eine falsch abgelesene Marke ergäbe schon eine Änderung.</translation>
    </message>
    <message>
        <source>Look at the microstep setting and the gear pair of the extruder, mend the parts list; do not trim it.</source>
        <translation>Mikroschritteinstellung und Zahnradpaar des Extruders ansehen, die Teileliste berichtigen; nicht nachtrimmen.</translation>
    </message>
    <message>
        <source>{fed} That is {factor:g} times, a wrong part and no bite of the wheel.</source>
        <translation>{fed} Das ist das {factor:g}-Fache: ein falsches Teil, kein Griff des Rads.</translation>
    </message>
    <message>
        <source>Look at gear pair, driven wheel and heavy slip; clean the wheel, then feed again unloaded.</source>
        <translation>Zahnradpaar, Antriebsrad und starken Schlupf ansehen; das Rad reinigen, dann ohne Last erneut fördern.</translation>
    </message>
    <message>
        <source>{fed} More than 5 % is no bite of the wheel; no change is suggested.</source>
        <translation>{fed} Mehr als 5 % ist kein Griff des Rads; keine Änderung wird vorgeschlagen.</translation>
    </message>
    <message>
        <source>{because} More than was commanded? Check which way you measured.</source>
        <translation>{because} Mehr als befohlen? Prüfen, in welcher Richtung gemessen wurde.</translation>
    </message>
    <message>
        <source>Divide the steps by the ratio instead of multiplying: undo the last change first.</source>
        <translation>Die Schritte durch das Verhältnis teilen statt multiplizieren: erst die letzte Änderung rückgängig machen.</translation>
    </message>
    <message>
        <source>{fed} That is the last ratio twice over: it was applied upside down.</source>
        <translation>{fed} Das ist das letzte Verhältnis doppelt: Es wurde umgekehrt angewendet.</translation>
    </message>
    <message>
        <source>Leave {old:g} steps/mm. Feed 200 to 300 mm, three times: the interval is too wide to decide.</source>
        <translation>Bei {old:g} Schritten/mm belassen. Dreimal 200 bis 300 mm fördern: Das Intervall ist für eine Entscheidung zu breit.</translation>
    </message>
    <message>
        <source>A tolerance is above 0 mm; type plus-minus what the part may be off.</source>
        <translation>Eine Toleranz liegt über 0 mm; plus-minus eingeben, was das Teil abweichen darf.</translation>
    </message>
    <message>
        <source>{old:g} by {tested} beads lays what {new:.3g} does by {used} ones of {width:g} × {height:g} mm.</source>
        <translation>{old:g} mit Raupenmodell {tested} legt dasselbe wie {new:.3g} mit {used} bei {width:g} × {height:g} mm.</translation>
    </message>
    <message>
        <source>The factor in force: {says}</source>
        <translation>Der gültige Faktor: {says}</translation>
    </message>
    <message>
        <source>The factor comes out as {factor}, {change} % from {old:g} in force ({methods}). Below 1.5 % nothing is gained by a change. {holds}</source>
        <translation>Der Faktor ergibt sich zu {factor}, {change} % gegenüber dem gültigen {old:g} ({methods}). Unter 1,5 % bringt eine Änderung nichts. {holds}</translation>
    </message>
    <message>
        <source>{because} The interval is wide: weigh a piece to be surer.</source>
        <translation>{because} Das Intervall ist breit: ein Stück wägen, um sicherer zu sein.</translation>
    </message>
    <message>
        <source>Change the flow factor from {old:g} to {factor}, then print the trial again and expect no change.</source>
        <translation>Den Durchflussfaktor von {old:g} auf {factor} ändern, dann den Versuch erneut drucken und keine Änderung erwarten.</translation>
    </message>
    <message>
        <source>{change} % is asked for ({methods}). It moves the face of a wall by {face} mm: no cure for a size. {holds}</source>
        <translation>{change} % werden verlangt ({methods}). Das verschiebt die Wandfläche um {face} mm: kein Mittel gegen eine Maßabweichung. {holds}</translation>
    </message>
    <message>
        <source>Keep the factor of {old:g}. Go back to feed, filament diameter, nozzle and bead model.</source>
        <translation>Beim Faktor {old:g} bleiben. Zurück zu Vorschub, Filamentdurchmesser, Düse und Raupenmodell.</translation>
    </message>
    <message>
        <source>A factor of {factor} ({methods}) is outside 0.85 to 1.10: something else is wrong.</source>
        <translation>Ein Faktor von {factor} ({methods}) liegt außerhalb von 0,85 bis 1,10: Etwas anderes stimmt nicht.</translation>
    </message>
    <message>
        <source>Keep the factor of {old:g}; estimates that conflict are not averaged.</source>
        <translation>Beim Faktor {old:g} bleiben; widersprüchliche Schätzwerte werden nicht gemittelt.</translation>
    </message>
    <message>
        <source>Keep the factor of {old:g}. Weigh a piece, or read more places: the interval is too wide to decide.</source>
        <translation>Beim Faktor {old:g} bleiben. Ein Stück wägen oder mehr Stellen messen: Das Intervall ist für eine Entscheidung zu breit.</translation>
    </message>
    <message>
        <source>The factor comes out as {factor}, {change} % from {old:g} in force ({methods}).</source>
        <translation>Der Faktor ergibt sich zu {factor}, {change} % gegenüber dem gültigen {old:g} ({methods}).</translation>
    </message>
    <message>
        <source>{value} ± {U}</source>
        <translation>{value} ± {U}</translation>
    </message>
    <message>
        <source>Part size, steps per millimetre, contour offset: a flow factor never cures a size.</source>
        <translation>Teilemaß, Schritte je Millimeter, Konturversatz: Ein Durchflussfaktor heilt nie ein Maß.</translation>
    </message>
    <message>
        <source>does not say for which nozzle temperature</source>
        <translation>sagt nicht, für welche Düsentemperatur</translation>
    </message>
    <message>
        <source>was found at {temperature:g} °C, this piece printed at {nozzle:g} °C: it does not hold beyond {near:g} K, measure the flow again</source>
        <translation>wurde bei {temperature:g} °C gefunden, dieses Stück bei {nozzle:g} °C gedruckt: über {near:g} K hinaus gilt er nicht, den Durchfluss neu messen</translation>
    </message>
    <message>
        <source>holds within {near:g} K of {temperature:g} °C, to {rate:g} mm³/s, bore {bore:g} mm: this piece was printed at {nozzle:g} °C</source>
        <translation>gilt bis {near:g} K um {temperature:g} °C, bis {rate:g} mm³/s, Bohrung {bore:g} mm: Dieses Stück wurde bei {nozzle:g} °C gedruckt</translation>
    </message>
    <message>
        <source>holds within {near:g} K of {temperature:g} °C, to {rate:g} mm³/s, bore {bore:g} mm: this trial does not know yours</source>
        <translation>gilt innerhalb von {near:g} K um {temperature:g} °C, bis {rate:g} mm³/s, Bohrung {bore:g} mm: Dieser Versuch kennt die Ihren nicht</translation>
    </message>
    <message>
        <source>Half speed halves the volumetric rate and doubles the time of a layer too, so better alone does not say which of them it is.</source>
        <translation>Halbe Geschwindigkeit halbiert auch die Volumenrate und verdoppelt die Zeit einer Schicht; besser allein sagt also nicht, woran es liegt.</translation>
    </message>
    <message>
        <source>usual</source>
        <translation>üblich</translation>
    </message>
    <message>
        <source>half speed and acceleration</source>
        <translation>halbe Geschwindigkeit und Beschleunigung</translation>
    </message>
    <message>
        <source>full speed, half layer height</source>
        <translation>volle Geschwindigkeit, halbe Schichthöhe</translation>
    </message>
    <message>
        <source>full speed, second copy on the bed</source>
        <translation>volle Geschwindigkeit, zweites Exemplar auf dem Bett</translation>
    </message>
    <message>
        <source>half speed</source>
        <translation>halbe Geschw.</translation>
    </message>
    <message>
        <source>half layers</source>
        <translation>halbe Schichten</translation>
    </message>
    <message>
        <source>two copies</source>
        <translation>zwei Exemplare</translation>
    </message>
    <message>
        <source>{run} {score:.1f}</source>
        <translation>{run} {score:.1f}</translation>
    </message>
    <message>
        <source>Mean scores of {count} judges: {scores}.</source>
        <translation>Mittlere Punkte von {count} Bewertern: {scores}.</translation>
    </message>
    <message>
        <source>Speed, acceleration, cooling: they are not the cause.</source>
        <translation>Geschwindigkeit, Beschleunigung, Kühlung: Sie sind nicht die Ursache.</translation>
    </message>
    <message>
        <source>Steps per millimetre, squareness, offsets: the setup is not the cause.</source>
        <translation>Schritte je Millimeter, Rechtwinkligkeit, Versätze: Die Einrichtung ist nicht die Ursache.</translation>
    </message>
    <message>
        <source>Both judges find the usual print without fault.</source>
        <translation>Beide Bewerter finden den üblichen Druck fehlerfrei.</translation>
    </message>
    <message>
        <source>Slower is no better: look at geometry and setup, that is lost motion, squareness, offsets, bed, first layer and filament.</source>
        <translation>Langsamer ist nicht besser: Geometrie und Einrichtung ansehen, also toten Gang, Rechtwinkligkeit, Versätze, Bett, erste Schicht und Filament.</translation>
    </message>
    <message>
        <source>Slower is better. Two more runs split rate from layer time: full speed at half the layer height, and full speed with a second copy on the bed.</source>
        <translation>Langsamer ist besser. Zwei weitere Läufe trennen Rate und Schichtzeit: volle Geschwindigkeit mit halber Schichthöhe und volle Geschwindigkeit mit einem zweiten Exemplar auf dem Bett.</translation>
    </message>
    <message>
        <source>It is the flow rate: measure the flow ceiling, then the pressure lag; until then print slower.</source>
        <translation>Es ist der Durchfluss: die Durchflussgrenze messen, dann den Druckverzug; bis dahin langsamer drucken.</translation>
    </message>
    <message>
        <source>It is the time of a layer: more cooling, or a longer least time of a layer; speed itself is innocent.</source>
        <translation>Es ist die Zeit einer Schicht: mehr Kühlung oder eine längere Mindestzeit je Schicht; die Geschwindigkeit selbst ist unschuldig.</translation>
    </message>
    <message>
        <source>A lower rate and longer layers both help: measure the flow ceiling, then make the cooling ladder.</source>
        <translation>Eine kleinere Rate und längere Schichten helfen beide: die Durchflussgrenze messen, dann die Kühlleiter machen.</translation>
    </message>
    <message>
        <source>Neither rate nor layer time: it is the motion itself. Read the ringing, try a lower corner speed, and look for lost steps: home before and after.</source>
        <translation>Weder Rate noch Schichtzeit: Es ist die Bewegung selbst. Das Nachschwingen messen, eine kleinere Eckgeschwindigkeit versuchen und nach verlorenen Schritten suchen: Referenzfahrt vorher und nachher.</translation>
    </message>
    <message>
        <source>The judges do not agree. Print the runs once more, shuffle, and score again.</source>
        <translation>Die Bewerter sind sich nicht einig. Die Läufe noch einmal drucken, mischen und erneut bewerten.</translation>
    </message>
    <message>
        <source>Everything: nothing is proved yet.</source>
        <translation>Alles: Noch ist nichts nachgewiesen.</translation>
    </message>
    <message>
        <source>Not ticked: {item}. Look at it too, or write down the fault.</source>
        <translation>Nicht angekreuzt: {item}. Auch dies ansehen oder den Fehler notieren.</translation>
    </message>
    <message>
        <source>Pluck the free span in its middle; a tuner or a sound program gives the tone.</source>
        <translation>Die freie Länge in der Mitte zupfen; ein Stimmgerät oder ein Tonprogramm gibt den Ton an.</translation>
    </message>
    <message>
        <source>Tension {tensions}, from tone ± 1 Hz, span ± 1 mm, mass ± 5 %.</source>
        <translation>Spannung {tensions}, aus Ton ± 1 Hz, freier Länge ± 1 mm, Masse ± 5 %.</translation>
    </message>
    <message>
        <source>The two tones differ by more than 5 %; tension the belts alike, or write down the fault.</source>
        <translation>Die beiden Töne unterscheiden sich um mehr als 5 %; die Riemen gleich spannen oder den Fehler notieren.</translation>
    </message>
    <message>
        <source>Command 100 mm and type what the rule reads.</source>
        <translation>100 mm befehlen und eingeben, was das Lineal zeigt.</translation>
    </message>
    <message>
        <source>More than 0.5 mm off is a wrong part, not a setting: see the mix-up finder on the page Drive.</source>
        <translation>Mehr als 0,5 mm daneben ist ein falsches Teil, keine Einstellung: siehe den Verwechslungssucher auf der Seite Antrieb.</translation>
    </message>
    <message>
        <source>Machine and filament settings: an instrument&apos;s error is mended at the instrument.</source>
        <translation>Maschinen- und Filamenteinstellungen: Der Fehler eines Messmittels wird am Messmittel behoben.</translation>
    </message>
    <message>
        <source>Read zero and a reference too: these readings tell about the hand only.</source>
        <translation>Auch Nullpunkt und ein Normal messen: Diese Messwerte sagen nur etwas über die Hand.</translation>
    </message>
    <message>
        <source>No reference was read.</source>
        <translation>Kein Normal wurde gemessen.</translation>
    </message>
    <message>
        <source>Keep the check; its uncertainties go into the other trials by themselves.</source>
        <translation>Die Prüfung behalten; ihre Unsicherheiten gehen von selbst in die anderen Versuche ein.</translation>
    </message>
    <message>
        <source>The error nearest to its limit is {error} ± {U} {unit} at {reference:.6g} {unit}; limit ± {limit:g} {unit}.</source>
        <translation>Die Abweichung am nächsten an ihrer Grenze ist {error} ± {U} {unit} bei {reference:.6g} {unit}; Grenze ± {limit:g} {unit}.</translation>
    </message>
    <message>
        <source>Wipe it, set zero, and check it again; what was read with it since its last good check is in doubt.</source>
        <translation>Abwischen, nullen und erneut prüfen; was seit der letzten guten Prüfung damit gemessen wurde, ist zweifelhaft.</translation>
    </message>
    <message>
        <source>Have it mended or use another; what was read with it since its last good check is in doubt.</source>
        <translation>Instand setzen lassen oder ein anderes verwenden; was seit der letzten guten Prüfung damit gemessen wurde, ist zweifelhaft.</translation>
    </message>
    <message>
        <source>Wipe the jaws and look again: where light stays, they are worn; small pieces read too small there.</source>
        <translation>Die Messschenkel abwischen und erneut ansehen: Wo Licht bleibt, sind sie verschlissen; kleine Stücke messen dort zu klein.</translation>
    </message>
    <message>
        <source>Find out why zero moved, then check it again.</source>
        <translation>Herausfinden, warum sich der Nullpunkt verschoben hat, dann erneut prüfen.</translation>
    </message>
    <message>
        <source>Read a reference too, near the longest length you measure: zero alone proves nothing.</source>
        <translation>Auch ein Normal messen, nahe der größten gemessenen Länge: Der Nullpunkt allein beweist nichts.</translation>
    </message>
    <message>
        <source>Nothing is proved this near to the limit: read more often, or use a reference that is better known.</source>
        <translation>So nahe an der Grenze ist nichts nachgewiesen: öfter messen oder ein genauer bekanntes Normal verwenden.</translation>
    </message>
    <message>
        <source>Zero moved from {first:.6g} to {farthest:.6g} {unit} during this check ({allowed:g} {unit} is usual).</source>
        <translation>Die Null wanderte während dieser Prüfung von {first:.6g} nach {farthest:.6g} {unit} (üblich sind {allowed:g} {unit}).</translation>
    </message>
    <message>
        <source>{zero} The readings in between ({count}) are marked doubtful. Read two of them again.</source>
        <translation>{zero} Die Messwerte dazwischen ({count}) sind als zweifelhaft markiert. Zwei davon erneut messen.</translation>
    </message>
    <message>
        <source>Its scale is off by {scale}: other trials count that as uncertainty. Add the correction of the plot by hand where it matters.</source>
        <translation>Der Maßstab weicht um {scale} ab: Andere Versuche rechnen das als Unsicherheit. Wo es darauf ankommt, die Korrektion aus dem Diagramm von Hand anbringen.</translation>
    </message>
    <message>
        <source>All re-seated readings are equal: type what the instrument shows, not what it should.</source>
        <translation>Alle neu angesetzten Messwerte sind gleich: eingeben, was das Messmittel zeigt, nicht was es zeigen sollte.</translation>
    </message>
    <message>
        <source>The second person reads {offset} more: let one person read one trial.</source>
        <translation>Die zweite Person misst {offset} mehr: einen Versuch von einer Person messen lassen.</translation>
    </message>
    <message>
        <source>The hand, {sd}, is good for {promised}: below a tenth of it.</source>
        <translation>Die Hand, {sd}, ist gut für {promised}: unter einem Zehntel davon.</translation>
    </message>
    <message>
        <source>The hand, {sd}, is usable for {promised}: below a fifth of it.</source>
        <translation>Die Hand, {sd}, ist brauchbar für {promised}: unter einem Fünftel davon.</translation>
    </message>
    <message>
        <source>The hand, {sd}, cannot promise {promised}: it is a fifth of it or more. Average several seatings, or use another instrument.</source>
        <translation>Die Hand, {sd}, kann {promised} nicht zusagen: Sie macht ein Fünftel davon oder mehr aus. Mehrmals ansetzen und mitteln oder ein anderes Messmittel verwenden.</translation>
    </message>
    <message>
        <source>With steps of {step:g} {unit} weigh {least:g} {unit} or more: less is known worse than a third of a percent.</source>
        <translation>Bei Schritten von {step:g} {unit} mindestens {least:g} {unit} wägen: Weniger ist schlechter als auf ein Drittel Prozent bekannt.</translation>
    </message>
    <message>
        <source>Trial № {number} holds no readings.</source>
        <translation>Versuch № {number} enthält keine Messwerte.</translation>
    </message>
    <message>
        <source>Trial № {number} holds a reading that is no number.</source>
        <translation>Versuch № {number} enthält einen Messwert, der keine Zahl ist.</translation>
    </message>
    <message>
        <source>Reversal trial № {trial} measured {value} along {axis} on the machine itself, proved above {limit:g} mm.</source>
        <translation>Umkehrspannenversuch № {trial} hat entlang {axis} an der Maschine selbst {value} gemessen, nachgewiesen über {limit:g} mm.</translation>
    </message>
    <message>
        <source>Measure the reversal of {axis} again, or withdraw trial № {trial}.</source>
        <translation>Die Umkehrspanne von {axis} erneut messen oder Versuch № {trial} zurückziehen.</translation>
    </message>
    <message>
        <source>{found} This print shows {now}: was it mended since?</source>
        <translation>{found} Dieser Druck zeigt {now}: Wurde es seither behoben?</translation>
    </message>
    <message>
        <source>{where} Then measure the reversal again, and print again.</source>
        <translation>{where} Dann die Umkehrspanne erneut messen und erneut drucken.</translation>
    </message>
    <message>
        <source>{because} Reversal trial № {trial} measured {value} on the machine itself.</source>
        <translation>{because} Umkehrspannenversuch № {trial} hat an der Maschine selbst {value} gemessen.</translation>
    </message>
    <message>
        <source>{because} Reversal trial № {trial} measured {value} only: if the axis is still so, the rest is wall outset.</source>
        <translation>{because} Umkehrspannenversuch № {trial} hat nur {value} gemessen: Ist die Achse noch so, dann ist der Rest Wandüberstand.</translation>
    </message>
    <message>
        <source>measure more kinds of feature</source>
        <translation>mehr Arten von Merkmalen messen</translation>
    </message>
    <message>
        <source>Temperature</source>
        <translation>Temperatur</translation>
    </message>
    <message>
        <source>Caution: burns, fumes. Ventilate, stay with it, never above the hot end&apos;s or the material&apos;s limit. Be sure that heating is cut if the sensor fails; if that is not known, no ladder. Local rules come first.</source>
        <translation>Vorsicht: Verbrennungen, Dämpfe. Lüften, dabeibleiben, nie über die Grenze des Heizkopfs oder des Werkstoffs. Sicherstellen, dass die Heizung bei Ausfall des Fühlers abgeschaltet wird; ist das nicht bekannt, keine Leiter. Örtliche Regeln gehen vor.</translation>
    </message>
    <message>
        <source>Caution: hot nozzle, burns. A fan at full may cool the nozzle: watch its temperature. Stay with it; local rules come first.</source>
        <translation>Vorsicht: heiße Düse, Verbrennungsgefahr. Ein Lüfter auf voller Leistung kann die Düse abkühlen: ihre Temperatur beobachten. Dabeibleiben; örtliche Regeln gehen vor.</translation>
    </message>
    <message>
        <source>Caution: fast corners shake the machine; hands, hair and cables out of the travel. Stay with it, stop at the first lost step; local rules come first.</source>
        <translation>Vorsicht: Schnelle Ecken erschüttern die Maschine; Hände, Haare und Kabel aus dem Verfahrweg. Dabeibleiben, beim ersten verlorenen Schritt anhalten; örtliche Regeln gehen vor.</translation>
    </message>
    <message>
        <source>Caution: hot nozzle, burns. A gap too small scrapes the bed: hand on the switch; local rules come first.</source>
        <translation>Vorsicht: heiße Düse, Verbrennungsgefahr. Ein zu kleiner Spalt kratzt auf dem Bett: Hand am Schalter; örtliche Regeln gehen vor.</translation>
    </message>
    <message>
        <source>Caution: hot nozzle, burns. Ventilate the fumes, never leave it unattended, stop at the first grinding; local rules come first.</source>
        <translation>Vorsicht: heiße Düse, Verbrennungsgefahr. Dämpfe weglüften, nie unbeaufsichtigt lassen, beim ersten Mahlen anhalten; örtliche Regeln gehen vor.</translation>
    </message>
    <message>
        <source>Read one value of each specimen, all in the same way, and type its unit into “Value in”.</source>
        <translation>Je Probestück einen Wert messen, alle auf gleiche Art, und seine Einheit bei „Einheit“ eingeben.</translation>
    </message>
    <message>
        <source>Read the width of each line 5 mm after each change of speed, and in the middle.</source>
        <translation>Die Breite jeder Linie 5 mm nach jedem Wechsel der Geschwindigkeit und in der Mitte messen.</translation>
    </message>
    <message>
        <source>A line at 25, 70, 25 mm/s for each step.</source>
        <translation>Je Stufe eine Linie mit 25, 70, 25 mm/s.</translation>
    </message>
    <message>
        <source>Hot to cold, as “Show the steps” lists the letters; two minutes at each once the sensor is steady within 1 K. Bridge, overhang, two thin posts, and for each judge a tab to snap last.</source>
        <translation>Von heiß nach kalt, wie „Stufen zeigen“ die Buchstaben nennt; je zwei Minuten, sobald der Fühler auf 1 K ruhig ist. Brücke, Überhang, zwei dünne Säulen und für jeden Bewerter eine Lasche, die zuletzt abgebrochen wird.</translation>
    </message>
    <message>
        <source>A line at 25, 70, 25 mm/s for each step; score how even its width is: 4 even, 0 useless.</source>
        <translation>Je Stufe eine Linie mit 25, 70, 25 mm/s; bewerten, wie gleichmäßig ihre Breite ist: 4 gleichmäßig, 0 unbrauchbar.</translation>
    </message>
    <message>
        <source>No value yet. Read one value of each specimen, such as the force that snaps it, and type its unit into “Value in”, which stays empty for a count.</source>
        <translation>Noch kein Wert. Je Probestück einen Wert messen, etwa die Kraft, bei der es bricht, und seine Einheit bei „Einheit“ eingeben; für eine Anzahl bleibt das leer.</translation>
    </message>
    <message>
        <source>No width yet. Read three widths of the line of each step: after the change to faster, where it is steady, and after the change to slower.</source>
        <translation>Noch keine Breite. An der Linie jeder Stufe drei Breiten messen: nach dem Wechsel auf schneller, wo sie gleichmäßig ist und nach dem Wechsel auf langsamer.</translation>
    </message>
    <message>
        <source>No score yet. One person prints and marks the specimens; two others score them, each alone, from 0 to 4; more is always better.</source>
        <translation>Noch keine Bewertung. Eine Person druckt und kennzeichnet die Probestücke; zwei andere bewerten sie, jede für sich, von 0 bis 4; mehr ist immer besser.</translation>
    </message>
    <message>
        <source>Hot to cold, two minutes at each step once the sensor is steady within 1 K.</source>
        <translation>Von heiß nach kalt, zwei Minuten je Stufe, sobald der Fühler auf 1 K ruhig ist.</translation>
    </message>
    <message>
        <source>Two posts 40 mm apart for each step, dry filament.</source>
        <translation>Je Stufe zwei Säulen mit 40 mm Abstand, trockenes Filament.</translation>
    </message>
    <message>
        <source>Square posts with sharp corners for each step.</source>
        <translation>Je Stufe quadratische Säulen mit scharfen Ecken.</translation>
    </message>
    <message>
        <source>Overhang, bridge and a tab to snap for each step.</source>
        <translation>Je Stufe Überhang, Brücke und eine Lasche zum Abbrechen.</translation>
    </message>
    <message>
        <source>A single first layer for each step.</source>
        <translation>Je Stufe eine einzelne erste Schicht.</translation>
    </message>
    <message>
        <source>Change this setting only.</source>
        <translation>Nur diese Einstellung ändern.</translation>
    </message>
    <message>
        <source>Two posts 40 mm apart for each step, dry filament. Score the strings: 4 none, 0 a web.</source>
        <translation>Je Stufe zwei Säulen mit 40 mm Abstand, trockenes Filament. Die Fäden bewerten: 4 keine, 0 ein Netz.</translation>
    </message>
    <message>
        <source>Square posts with sharp corners; score bulge and ripple beside the corner: 4 none.</source>
        <translation>Quadratische Säulen mit scharfen Ecken; Ausbeulung und Welligkeit neben der Ecke bewerten: 4 keine.</translation>
    </message>
    <message>
        <source>Overhang, bridge and a tab to snap for each step; score shape and bond together.</source>
        <translation>Je Stufe Überhang, Brücke und eine Lasche zum Abbrechen; Form und Haftung zusammen bewerten.</translation>
    </message>
    <message>
        <source>A single first layer for each step; score the top: 4 closed and even, 0 gaps or ridges.</source>
        <translation>Je Stufe eine einzelne erste Schicht; die Oberseite bewerten: 4 geschlossen und gleichmäßig, 0 Lücken oder Wülste.</translation>
    </message>
    <message>
        <source>Change this setting only; 4 is without fault, 0 useless.</source>
        <translation>Nur diese Einstellung ändern; 4 ist fehlerfrei, 0 unbrauchbar.</translation>
    </message>
    <message>
        <source>Read all {count} widths of the line at {step:g}, or exclude it.</source>
        <translation>Alle {count} Breiten der Linie bei {step:g} messen oder sie ausschließen.</translation>
    </message>
    <message>
        <source>Scatter alone would bend the curve as much in {percent:.0f} % of cases.</source>
        <translation>Streuung allein würde die Kurve in {percent:.0f} % der Fälle ebenso stark krümmen.</translation>
    </message>
    <message>
        <source>Both ends are better than the middle: look for a second thing that changed, and print it again.</source>
        <translation>Beide Enden sind besser als die Mitte: nach etwas Zweitem suchen, das sich geändert hat, und erneut drucken.</translation>
    </message>
    <message>
        <source>No single best step bends so.</source>
        <translation>Eine einzelne beste Stufe krümmt nicht so.</translation>
    </message>
    <message>
        <source>No step does it: where it gets worse again nothing scores {good:g}. Look for another cause.</source>
        <translation>Keine Stufe genügt: Wo es wieder schlechter wird, erreicht nichts {good:g} Punkte. Eine andere Ursache suchen.</translation>
    </message>
    <message>
        <source>The steps above the best one are proved worse, so more does not help.</source>
        <translation>Die Stufen über der besten sind nachgewiesen schlechter, mehr hilft also nicht.</translation>
    </message>
    <message>
        <source>The parabola through {count} readings turns between {low:.3g} and {high:.3g} {unit} (95 %).</source>
        <translation>Die Parabel durch {count} Messwerte hat ihren Scheitel zwischen {low:.3g} und {high:.3g} {unit} (95 %).</translation>
    </message>
    <message>
        <source>It scores {score:.1f} ({low:.1f} to {high:.1f}); from {first:g} to {last:g} {unit} no step is proved worse than the best ({count} scores).</source>
        <translation>Bewertung {score:.1f} ({low:.1f} bis {high:.1f}); von {first:g} bis {last:g} {unit} ist keine Stufe nachgewiesen schlechter als die beste ({count} Bewertungen).</translation>
    </message>
    <message>
        <source>under {step:g}</source>
        <translation>unter {step:g}</translation>
    </message>
    <message>
        <source>over {step:g}</source>
        <translation>über {step:g}</translation>
    </message>
    <message>
        <source>{percent:.0f} % of the pieces score {good:g} or more from {at:.3g} {unit} on ({low} to {high}, 95 %; {count} scores).</source>
        <translation>{percent:.0f} % der Stücke erreichen {good:g} Punkte oder mehr ab {at:.3g} {unit} ({low} bis {high}, 95 %; {count} Bewertungen).</translation>
    </message>
    <message>
        <source>{value:.3g}</source>
        <translation>{value:.3g}</translation>
    </message>
    <message>
        <source>Hardly a string at any length: less may do too. Extend the ladder below the first step.</source>
        <translation>Bei keiner Länge nennenswert Fäden: Auch weniger kann genügen. Die Leiter unter die erste Stufe verlängern.</translation>
    </message>
    <message>
        <source>Strings alike at all lengths: the filament is wet or too hot; retraction is not the cause.</source>
        <translation>Fäden bei allen Längen gleich: Das Filament ist feucht oder zu heiß; der Rückzug ist nicht die Ursache.</translation>
    </message>
    <message>
        <source>After a change of it read the contour offset again: corners and walls change with it.</source>
        <translation>Nach einer Änderung daran den Konturversatz erneut messen: Ecken und Wände ändern sich mit.</translation>
    </message>
    <message>
        <source>The first step does it already: less may do too; extend the ladder below it.</source>
        <translation>Schon die erste Stufe genügt: Auch weniger kann genügen; die Leiter darunter verlängern.</translation>
    </message>
    <message>
        <source>It may take up to {high:.3g} {unit}: if a string is seen, use the next step.</source>
        <translation>Es können bis zu {high:.3g} {unit} nötig sein: Zeigt sich ein Faden, die nächste Stufe verwenden.</translation>
    </message>
    <message>
        <source>The least that does is used: more does harm elsewhere (gaps after travels, grinding).</source>
        <translation>Verwendet wird das Geringste, das genügt: Mehr schadet anderswo (Lücken nach Leerwegen, Mahlen).</translation>
    </message>
    <message>
        <source>{subject}: {results}</source>
        <translation>{subject}: {results}</translation>
    </message>
    <message>
        <source>{subject}</source>
        <translation>{subject}</translation>
    </message>
    <message>
        <source>{change}</source>
        <translation>{change}</translation>
    </message>
    <message>
        <source>Drive parts written down: {axes}</source>
        <translation>Antriebsteile festgehalten: {axes}</translation>
    </message>
    <message>
        <source>{what}: {step}</source>
        <translation>{what}: {step}</translation>
    </message>
    <message>
        <source>{what} ({number})</source>
        <translation>{what} ({number})</translation>
    </message>
    <message>
        <source>Taken back: {what}</source>
        <translation>Zurückgenommen: {what}</translation>
    </message>
    <message>
        <source>{what}: {note}</source>
        <translation>{what}: {note}</translation>
    </message>
    <message>
        <source>{name} {old} → {new}</source>
        <translation>{name} {old} → {new}</translation>
    </message>
    <message>
        <source>Undone: {change}</source>
        <translation>Rückgängig gemacht: {change}</translation>
    </message>
    <message>
        <source>{setting} {axis}</source>
        <translation>{setting} {axis}</translation>
    </message>
    <message>
        <source>{name}</source>
        <translation>{name}</translation>
    </message>
    <message>
        <source>{name} {value}</source>
        <translation>{name} {value}</translation>
    </message>
    <message>
        <source>extruder steps</source>
        <translation>Extruderschritte</translation>
    </message>
    <message>
        <source>filament diameter</source>
        <translation>Filamentdurchmesser</translation>
    </message>
    <message>
        <source>flow factor</source>
        <translation>Durchflussfaktor</translation>
    </message>
    <message>
        <source>contour offset</source>
        <translation>Konturversatz</translation>
    </message>
    <message>
        <source>shrink allowance</source>
        <translation>Schwindzugabe</translation>
    </message>
    <message>
        <source>axis scale</source>
        <translation>Achsmaßstab</translation>
    </message>
    <message>
        <source>nozzle temperature</source>
        <translation>Düsentemperatur</translation>
    </message>
    <message>
        <source>bed temperature</source>
        <translation>Betttemperatur</translation>
    </message>
    <message>
        <source>retraction</source>
        <translation>Rückzug</translation>
    </message>
    <message>
        <source>pressure lag</source>
        <translation>Druckverzug</translation>
    </message>
    <message>
        <source>cooling</source>
        <translation>Kühlung</translation>
    </message>
    <message>
        <source>height offset</source>
        <translation>Höhenversatz</translation>
    </message>
    <message>
        <source>printing speed</source>
        <translation>Druckgeschwindigkeit</translation>
    </message>
    <message>
        <source>acceleration</source>
        <translation>Beschleunigung</translation>
    </message>
    <message>
        <source>steps per millimetre</source>
        <translation>Schritte/mm</translation>
    </message>
    <message>
        <source>scale</source>
        <translation>Maßstab</translation>
    </message>
    <message>
        <source>squareness term</source>
        <translation>Rechtwinkligkeitsterm</translation>
    </message>
    <message>
        <source>{value:g} {unit} is above this machine&apos;s limit of {limit:g} {unit}. Refused: lost steps, and worse.</source>
        <translation>{value:g} {unit} liegen über der Grenze dieser Maschine von {limit:g} {unit}. Abgelehnt: verlorene Schritte und Schlimmeres.</translation>
    </message>
    <message>
        <source>A level of {value:g} {unit} cannot be; retype it.</source>
        <translation>Eine Stufe von {value:g} {unit} kann es nicht geben; neu eingeben.</translation>
    </message>
    <message>
        <source>It scores {score:.1f} ({low:.1f} to {high:.1f}), {asked:g} is asked; by the time model it takes {percent:.0f} % of the time of {slowest:.4g} {unit}.</source>
        <translation>Bewertung {score:.1f} ({low:.1f} bis {high:.1f}), verlangt sind {asked:g}; nach dem Zeitmodell dauert es {percent:.0f} % der Zeit von {slowest:.4g} {unit}.</translation>
    </message>
    <message>
        <source>{because} A faster level is good enough too, but only waits for the least layer time.</source>
        <translation>{because} Eine schnellere Stufe ist auch gut genug, wartet aber nur auf die Mindestschichtzeit.</translation>
    </message>
    <message>
        <source>Print at {value:.4g} {unit}.</source>
        <translation>Mit {value:.4g} {unit} drucken.</translation>
    </message>
    <message>
        <source>None of these levels is good enough: speed is not all of it. Make the test at half speed.</source>
        <translation>Keine dieser Stufen ist gut genug: Die Geschwindigkeit ist nicht alles. Den Versuch mit halber Geschwindigkeit machen.</translation>
    </message>
    <message>
        <source>Score more specimens of {value:.4g} {unit}, or go slower.</source>
        <translation>Mehr Probestücke mit {value:.4g} {unit} bewerten oder langsamer werden.</translation>
    </message>
    <message>
        <source>The best one scores {score:.1f} ({low:.1f} to {high:.1f}); {asked:g} is asked.</source>
        <translation>Die beste erreicht {score:.1f} ({low:.1f} bis {high:.1f}); verlangt sind {asked:g}.</translation>
    </message>
    <message>
        <source>Beyond {value:.4g} {unit} the next level saves under 5 % of the time.</source>
        <translation>Über {value:.4g} {unit} hinaus spart die nächste Stufe weniger als 5 % der Zeit.</translation>
    </message>
    <message>
        <source>The last level tried is good enough: a faster one may be too; extend the trial.</source>
        <translation>Die letzte versuchte Stufe ist gut genug: Eine schnellere kann es auch sein; den Versuch erweitern.</translation>
    </message>
    <message>
        <source>No difference seen between the levels.</source>
        <translation>Kein Unterschied zwischen den Stufen zu sehen.</translation>
    </message>
    <message>
        <source>Up to {speed:.3g} mm/s ({path:.4g} mm of path in {least:g} s) none waits, whatever its ramps.</source>
        <translation>Bis {speed:.3g} mm/s ({path:.4g} mm Weg in {least:g} s) wartet keine, wie steil die Rampen auch sind.</translation>
    </message>
    <message>
        <source>From {first:.4g} {unit} on the shortest layer is done before its least {least:g} s and waits: there faster buys nothing. At {last:.4g} {unit} {count:.0f} of {all:.0f} layers wait, {wait} in all. {floor}</source>
        <translation>Ab {first:.4g} {unit} ist die kürzeste Schicht vor ihren mindestens {least:g} s fertig und wartet: Schneller bringt dort nichts. Bei {last:.4g} {unit} warten {count:.0f} von {all:.0f} Schichten, zusammen {wait}. {floor}</translation>
    </message>
    <message>
        <source>{time}, waits {wait}</source>
        <translation>{time}, wartet {wait}</translation>
    </message>
    <message>
        <source>{floor} The shortest layer begins at line {line} of the file.</source>
        <translation>{floor} Die kürzeste Schicht beginnt in Zeile {line} der Datei.</translation>
    </message>
    <message>
        <source>The least layer time holds no level up. {floor}</source>
        <translation>Die Mindestschichtzeit hält keine Stufe auf. {floor}</translation>
    </message>
    <message>
        <source>Steps per millimetre, flow factor; and only one of speed, acceleration and corner speed at a time.</source>
        <translation>Schritte je Millimeter, Durchflussfaktor; und nur eines von Geschwindigkeit, Beschleunigung und Eckgeschwindigkeit auf einmal.</translation>
    </message>
    <message>
        <source>flow ceiling at {temperature} °C</source>
        <translation>Durchflussgrenze bei {temperature} °C</translation>
    </message>
    <message>
        <source>scale error {axis}</source>
        <translation>Maßstabsfehler {axis}</translation>
    </message>
    <message>
        <source>lost motion {axis}</source>
        <translation>toter Gang {axis}</translation>
    </message>
    <message>
        <source>constant of outside lengths {axis}</source>
        <translation>Konstante der Außenlängen {axis}</translation>
    </message>
    <message>
        <source>constant of closed windows {axis}</source>
        <translation>Konstante geschlossener Fenster {axis}</translation>
    </message>
    <message>
        <source>first-layer squash</source>
        <translation>Stauchung der ersten Schicht</translation>
    </message>
    <message>
        <source>origin {axis}</source>
        <translation>Nullpunkt {axis}</translation>
    </message>
    <message>
        <source>reversal error {axis}</source>
        <translation>Umkehrspanne {axis}</translation>
    </message>
    <message>
        <source>mean reversal {axis}</source>
        <translation>mittlere Umkehrspanne {axis}</translation>
    </message>
    <message>
        <source>deviation M {axis}</source>
        <translation>Abweichung M {axis}</translation>
    </message>
    <message>
        <source>deviation E {axis}</source>
        <translation>Abweichung E {axis}</translation>
    </message>
    <message>
        <source>E {axis} from −</source>
        <translation>E {axis} von −</translation>
    </message>
    <message>
        <source>E {axis} from +</source>
        <translation>E {axis} von +</translation>
    </message>
    <message>
        <source>repeatability R {axis}</source>
        <translation>Wiederholpräzision R {axis}</translation>
    </message>
    <message>
        <source>R {axis} from −</source>
        <translation>R {axis} von −</translation>
    </message>
    <message>
        <source>R {axis} from +</source>
        <translation>R {axis} von +</translation>
    </message>
    <message>
        <source>accuracy A {axis}</source>
        <translation>Positioniergenauigkeit A {axis}</translation>
    </message>
    <message>
        <source>A {axis} from −</source>
        <translation>A {axis} von −</translation>
    </message>
    <message>
        <source>A {axis} from +</source>
        <translation>A {axis} von +</translation>
    </message>
    <message>
        <source>play {axis}</source>
        <translation>Spiel {axis}</translation>
    </message>
    <message>
        <source>wind-up {axis}</source>
        <translation>Verspannung {axis}</translation>
    </message>
    <message>
        <source>compliance {axis}</source>
        <translation>Nachgiebigkeit {axis}</translation>
    </message>
    <message>
        <source>side compliance {axis}</source>
        <translation>Quernachgiebigkeit {axis}</translation>
    </message>
    <message>
        <source>squareness {axis}</source>
        <translation>Rechtwinkligkeit {axis}</translation>
    </message>
    <message>
        <source>bed tilt along {axis}</source>
        <translation>Bettneigung entlang {axis}</translation>
    </message>
    <message>
        <source>ringing {axis}</source>
        <translation>Nachschwingen {axis}</translation>
    </message>
    <message>
        <source>damping {axis}</source>
        <translation>Dämpfung {axis}</translation>
    </message>
    <message>
        <source>mark repeats along {axis}</source>
        <translation>Abstand der Abdrücke entlang {axis}</translation>
    </message>
    <message>
        <source>acceleration by ripple {axis}</source>
        <translation>Beschleunigung nach Welligkeit {axis}</translation>
    </message>
    <message>
        <source>peak {number} {axis}</source>
        <translation>Spitze {number} {axis}</translation>
    </message>
    <message>
        <source>damping of peak {number} {axis}</source>
        <translation>Dämpfung der Spitze {number} {axis}</translation>
    </message>
    <message>
        <source>machine&apos;s share {axis}</source>
        <translation>Anteil der Maschine {axis}</translation>
    </message>
    <message>
        <source>shrinkage {axis}</source>
        <translation>Schwindung {axis}</translation>
    </message>
    <message>
        <source>mean error, outside</source>
        <translation>mittlere Abweichung, außen</translation>
    </message>
    <message>
        <source>mean error, inside</source>
        <translation>mittlere Abweichung, innen</translation>
    </message>
    <message>
        <source>mean error, bores</source>
        <translation>mittlere Abweichung, Bohrungen</translation>
    </message>
    <message>
        <source>mean error, heights</source>
        <translation>mittlere Abweichung, Höhen</translation>
    </message>
    <message>
        <source>spread, outside</source>
        <translation>Streuung, außen</translation>
    </message>
    <message>
        <source>spread, inside</source>
        <translation>Streuung, innen</translation>
    </message>
    <message>
        <source>spread, bores</source>
        <translation>Streuung, Bohrungen</translation>
    </message>
    <message>
        <source>spread, heights</source>
        <translation>Streuung, Höhen</translation>
    </message>
    <message>
        <source>promise, outside</source>
        <translation>Zusage, außen</translation>
    </message>
    <message>
        <source>promise, inside</source>
        <translation>Zusage, innen</translation>
    </message>
    <message>
        <source>promise, bores</source>
        <translation>Zusage, Bohrungen</translation>
    </message>
    <message>
        <source>promise, heights</source>
        <translation>Zusage, Höhen</translation>
    </message>
    <message>
        <source>predictions that held</source>
        <translation>eingetroffene Vorhersagen</translation>
    </message>
    <message>
        <source>predictions that did not hold</source>
        <translation>nicht eingetroffene Vorhersagen</translation>
    </message>
    <message>
        <source>factor on our U</source>
        <translation>Faktor auf unser U</translation>
    </message>
    <message>
        <source>wall outset per side</source>
        <translation>Wandüberstand je Seite</translation>
    </message>
    <message>
        <source>constant of round bosses</source>
        <translation>Konstante runder Außenzylinder</translation>
    </message>
    <message>
        <source>constant of round bores</source>
        <translation>Konstante runder Bohrungen</translation>
    </message>
    <message>
        <source>first-layer flare per side</source>
        <translation>Fußwulst der ersten Schicht je Seite</translation>
    </message>
    <message>
        <source>pads less height commanded</source>
        <translation>Felder minus befohlene Höhe</translation>
    </message>
    <message>
        <source>spread between places</source>
        <translation>Streuung zwischen den Stellen</translation>
    </message>
    <message>
        <source>fall over the places</source>
        <translation>Gefälle über die Stellen</translation>
    </message>
    <message>
        <source>bed flatness</source>
        <translation>Ebenheit des Betts</translation>
    </message>
    <message>
        <source>repeatability of the probe</source>
        <translation>Wiederholpräzision des Tasters</translation>
    </message>
    <message>
        <source>bed tilt along X, cold</source>
        <translation>Bettneigung entlang X, kalt</translation>
    </message>
    <message>
        <source>bed tilt along Y, cold</source>
        <translation>Bettneigung entlang Y, kalt</translation>
    </message>
    <message>
        <source>bed flatness, cold</source>
        <translation>Ebenheit des Betts, kalt</translation>
    </message>
    <message>
        <source>twist on four screws</source>
        <translation>Verwindung auf vier Schrauben</translation>
    </message>
    <message>
        <source>soak time</source>
        <translation>Durchwärmzeit</translation>
    </message>
    <message>
        <source>equivalent diameter</source>
        <translation>äquivalenter Durchmesser</translation>
    </message>
    <message>
        <source>ovality</source>
        <translation>Ovalität</translation>
    </message>
    <message>
        <source>spread of the diameter</source>
        <translation>Streuung des Durchmessers</translation>
    </message>
    <message>
        <source>area against nominal</source>
        <translation>Querschnittsfläche zu Nennmaß</translation>
    </message>
    <message>
        <source>mass per length</source>
        <translation>Masse je Länge</translation>
    </message>
    <message>
        <source>path of a mass box</source>
        <translation>Weg eines Massekastens</translation>
    </message>
    <message>
        <source>loss in drying</source>
        <translation>Verlust beim Trocknen</translation>
    </message>
    <message>
        <source>filament left</source>
        <translation>übriges Filament</translation>
    </message>
    <message>
        <source>fed of commanded</source>
        <translation>gefördert von befohlen</translation>
    </message>
    <message>
        <source>steps for 100 %</source>
        <translation>Schritte für 100 %</translation>
    </message>
    <message>
        <source>fed under load</source>
        <translation>gefördert unter Last</translation>
    </message>
    <message>
        <source>0.5 % slip at</source>
        <translation>0,5 % Schlupf bei</translation>
    </message>
    <message>
        <source>flow factor by walls</source>
        <translation>Durchflussfaktor aus Wänden</translation>
    </message>
    <message>
        <source>flow factor by mass</source>
        <translation>Durchflussfaktor aus Masse</translation>
    </message>
    <message>
        <source>flow factor by top pads</source>
        <translation>Durchflussfaktor aus Deckfeldern</translation>
    </message>
    <message>
        <source>speed it allows</source>
        <translation>zulässige Geschwindigkeit</translation>
    </message>
    <message>
        <source>speed to print at</source>
        <translation>Geschwindigkeit zum Drucken</translation>
    </message>
    <message>
        <source>acceleration to print at</source>
        <translation>Beschleunigung zum Drucken</translation>
    </message>
    <message>
        <source>its mean score</source>
        <translation>mittlere Punktzahl dazu</translation>
    </message>
    <message>
        <source>a layer waits from</source>
        <translation>eine Schicht wartet ab</translation>
    </message>
    <message>
        <source>corner speed</source>
        <translation>Eckgeschwindigkeit</translation>
    </message>
    <message>
        <source>first-layer gap</source>
        <translation>Spalt der ersten Schicht</translation>
    </message>
    <message>
        <source>hand, one reading</source>
        <translation>Hand, ein Messwert</translation>
    </message>
    <message>
        <source>second person</source>
        <translation>zweite Person</translation>
    </message>
    <message>
        <source>zero</source>
        <translation>Nullpunkt</translation>
    </message>
    <message>
        <source>zero, outside jaws</source>
        <translation>Nullpunkt, Außenschenkel</translation>
    </message>
    <message>
        <source>zero, inside jaws</source>
        <translation>Nullpunkt, Innenschenkel</translation>
    </message>
    <message>
        <source>zero, depth rod</source>
        <translation>Nullpunkt, Tiefenmaß</translation>
    </message>
    <message>
        <source>wear of the jaws</source>
        <translation>Verschleiß der Messschenkel</translation>
    </message>
    <message>
        <source>instrument scale</source>
        <translation>Maßstab des Messmittels</translation>
    </message>
    <message>
        <source>Predicted from other ladders: {value} ± {U} °C (trials {trials}). That is above this machine&apos;s limit of {limit:g} °C. Refused: do not try this lot there.</source>
        <translation>Vorhergesagt aus anderen Leitern: {value} ± {U} °C (Versuche {trials}). Das liegt über der Grenze dieser Maschine von {limit:g} °C. Abgelehnt: diese Charge dort nicht versuchen.</translation>
    </message>
    <message>
        <source>Predicted for this machine and lot from other ladders of the shop: {value} ± {U} °C (trials {trials}).</source>
        <translation>Für diese Maschine und Charge aus anderen Leitern der Werkstatt vorhergesagt: {value} ± {U} °C (Versuche {trials}).</translation>
    </message>
    <message>
        <source>{says} Its upper end is above this machine&apos;s limit of {limit:g} °C.</source>
        <translation>{says} Das obere Ende liegt über der Grenze dieser Maschine von {limit:g} °C.</translation>
    </message>
    <message>
        <source>{says} {compared}</source>
        <translation>{says} {compared}</translation>
    </message>
    <message>
        <source>Its own ladder (trial {trial}) agrees: {value:g} °C.</source>
        <translation>Die eigene Leiter (Versuch {trial}) stimmt überein: {value:g} °C.</translation>
    </message>
    <message>
        <source>Its own ladder (trial {trial}) says {value:g} °C, {apart:.0f} K from it, and ±{U:.0f} K is due: check the sensor with a thermometer, and whether lot and nozzle are those on record.</source>
        <translation>Die eigene Leiter (Versuch {trial}) sagt {value:g} °C, {apart:.0f} K davon entfernt; zu erwarten sind ±{U:.0f} K: den Fühler mit einem Thermometer prüfen und ob Charge und Düse die eingetragenen sind.</translation>
    </message>
    <message>
        <source>Nothing can be told yet: none links this machine with this lot. A ladder of one of {lots} on one of {machines} would tell, or this one here.</source>
        <translation>Noch lässt sich nichts sagen: Keine Leiter verbindet diese Maschine mit dieser Charge. Eine Leiter einer der Chargen {lots} auf einer der Maschinen {machines} gäbe Auskunft, oder diese hier.</translation>
    </message>
    <message>
        <source>Nothing can be told yet: this machine&apos;s sensor is not known against the others. A ladder here of a lot that was tried elsewhere too would tell, or this one here.</source>
        <translation>Noch lässt sich nichts sagen: Der Fühler dieser Maschine ist gegen die anderen nicht bekannt. Eine Leiter hier mit einer Charge, die auch anderswo versucht wurde, gäbe Auskunft, oder diese hier.</translation>
    </message>
    <message>
        <source>Nothing can be told yet: this lot was tried nowhere. A ladder of it on a machine that shares one of the lots {lots} with this one would tell, or this one here.</source>
        <translation>Noch lässt sich nichts sagen: Diese Charge wurde nirgends versucht. Eine Leiter von ihr auf einer Maschine, die eine der Chargen {lots} mit dieser gemeinsam hat, gäbe Auskunft, oder diese hier.</translation>
    </message>
    <message>
        <source>Nothing can be told yet: this ladder on this machine would tell.</source>
        <translation>Noch lässt sich nichts sagen: Diese Leiter auf dieser Maschine gäbe Auskunft.</translation>
    </message>
    <message>
        <source>“{text}” has no length; write for example 64 y, 30 x window, 8 x hole or 60 z.</source>
        <translation>„{text}“ hat keine Länge; zum Beispiel 64 y, 30 x window, 8 x hole oder 60 z schreiben.</translation>
    </message>
    <message>
        <source>“{text}”: {problem}</source>
        <translation>„{text}“: {problem}</translation>
    </message>
    <message>
        <source>{kind} {axis} {length:g} mm</source>
        <translation>{kind} {axis} {length:g} mm</translation>
    </message>
    <message>
        <source>{name}, {what}</source>
        <translation>{name}, {what}</translation>
    </message>
    <message>
        <source>outside lengths</source>
        <translation>Außenlängen</translation>
    </message>
    <message>
        <source>windows and notches</source>
        <translation>Fenster und Kerben</translation>
    </message>
    <message>
        <source>round bores</source>
        <translation>runde Bohrungen</translation>
    </message>
    <message>
        <source>Pegs in holes: read outside lengths and bores, or windows, on two parts at least.</source>
        <translation>Zapfen in Löchern: Außenlängen und Bohrungen oder Fenster messen, an mindestens zwei Teilen.</translation>
    </message>
    <message>
        <source>Peg of {peg:g} mm in a hole: draw {clearance:.2f} ± {U:.2f} mm clearance on the diameter, then {percent:g} % of the pairs go together (from {group} of {pieces} parts).</source>
        <translation>Zapfen von {peg:g} mm in einem Loch: {clearance:.2f} ± {U:.2f} mm Spiel im Durchmesser zeichnen, dann fügen sich {percent:g} % der Paare (aus {pieces} Teilen, {group}).</translation>
    </message>
    <message>
        <source>{says} So few parts tell little of a share: try one pair first.</source>
        <translation>{says} So wenige Teile sagen wenig über einen Anteil: erst ein Paar versuchen.</translation>
    </message>
    <message>
        <source>{says} No size near {peg:g} mm was read.</source>
        <translation>{says} Kein Maß nahe {peg:g} mm wurde gemessen.</translation>
    </message>
    <message>
        <source>{says} Round holes come out smaller still: read bores.</source>
        <translation>{says} Runde Löcher fallen noch kleiner aus: Bohrungen messen.</translation>
    </message>
    <message>
        <source>{count} rounds cannot be; type 1 to 20.</source>
        <translation>{count} Durchgänge kann es nicht geben; 1 bis 20 eingeben.</translation>
    </message>
    <message>
        <source>A {name} of {percent:g} % is told from none {chance} times in 100.</source>
        <translation>Von null unterschieden wird ein {name} von {percent:g} % in {chance} von 100 Fällen.</translation>
    </message>
    <message>
        <source>more than 99</source>
        <translation>mehr als 99</translation>
    </message>
    <message>
        <source>No repeat takes its expanded uncertainty below {floor:.3f} %: that is the instrument and where walls stand. Take a longer piece or a better instrument.</source>
        <translation>Keine Wiederholung bringt die erweiterte Unsicherheit unter {floor:.3f} %: Das sind das Messmittel und die Lage der Wände. Ein längeres Stück oder ein besseres Messmittel nehmen.</translation>
    </message>
    <message>
        <source>Temperature, run-out and the next print come on top: caliper work knows no scale better than ± {best:g} %.</source>
        <translation>Temperatur, Rundlauf und der nächste Druck kommen hinzu: Mit dem Messschieber ist kein Maßstab besser als ± {best:g} % bestimmbar.</translation>
    </message>
    <message>
        <source>In pairs over {length:g} mm, {needed} readings see it nine times in ten; take {more}, on two prints.</source>
        <translation>In Paaren über {length:g} mm zeigen ihn {needed} Messwerte in neun von zehn Fällen; {more} nehmen, an zwei Drucken.</translation>
    </message>
    <message>
        <source>On a length below {length:.0f} mm no repeat shows it, for the zero of the jaws.</source>
        <translation>Auf einer Länge unter {length:.0f} mm zeigt ihn keine Wiederholung, wegen des Nullpunkts der Messschenkel.</translation>
    </message>
    <message>
        <source>Prediction № {number} was changed after it was locked; it proves nothing.</source>
        <translation>Vorhersage № {number} wurde nach dem Festschreiben geändert; sie beweist nichts.</translation>
    </message>
    <message>
        <source>Trial № {number} was begun before the prediction was locked; it cannot verify it.</source>
        <translation>Versuch № {number} wurde begonnen, bevor die Vorhersage festgeschrieben war; er kann sie nicht bestätigen.</translation>
    </message>
    <message>
        <source>{inside} of {count} features lie inside their prediction (E_n up to 1); all together: χ² {chi2:.1f} of {dof}, by chance in {percent:.0f} of 100.</source>
        <translation>{inside} von {count} Merkmalen liegen innerhalb ihrer Vorhersage (E_n bis 1); alle zusammen: χ² {chi2:.1f} bei {dof}, durch Zufall in {percent:.0f} von 100.</translation>
    </message>
    <message>
        <source>Every setting: nothing is tuned by a proof piece.</source>
        <translation>Alle Einstellungen: An einem Nachweisteil wird nichts nachgestellt.</translation>
    </message>
    <message>
        <source>Look at the sign: take the change back and make it the other way round. Then lock a new prediction.</source>
        <translation>Auf das Vorzeichen achten: die Änderung zurücknehmen und andersherum vornehmen. Dann eine neue Vorhersage festschreiben.</translation>
    </message>
    <message>
        <source>{base} The readings lie where the change with the wrong sign would put them.</source>
        <translation>{base} Die Messwerte liegen dort, wohin die Änderung mit falschem Vorzeichen sie legen würde.</translation>
    </message>
    <message>
        <source>Keep the settings: prediction № {number} holds.</source>
        <translation>Einstellungen behalten: Vorhersage № {number} trifft zu.</translation>
    </message>
    <message>
        <source>Do not tune by this piece; look at what fails first.</source>
        <translation>Nicht nach diesem Stück einstellen; zuerst ansehen, was durchfällt.</translation>
    </message>
    <message>
        <source>Of {count} {group} {outside} are off, {mean} ± {U} mm in the mean; as many on one side, were each on its own, by chance in {percent:.0f} of 100.</source>
        <translation>{group}: {outside} von {count} weichen ab, im Mittel {mean} ± {U} mm; so viele auf einer Seite ergäbe, stünde jedes Maß für sich, der Zufall in {percent:.0f} von 100 Fällen.</translation>
    </message>
    <message>
        <source>Flow and wall outset own it, then the scale: pages Wall, Mass and Size error.</source>
        <translation>Verantwortlich sind Durchfluss und Wandüberstand, danach der Maßstab: Seiten Wand, Masse und Maßabweichung.</translation>
    </message>
    <message>
        <source>Wall outset and lost motion own it: pages Size error and Reversal.</source>
        <translation>Verantwortlich sind Wandüberstand und toter Gang: Seiten Maßabweichung und Umkehrspanne.</translation>
    </message>
    <message>
        <source>Facets and the pull of the arc own it: draw more facets, or ream.</source>
        <translation>Verantwortlich sind Facetten und der Zug des Bogens: mehr Facetten zeichnen oder aufreiben.</translation>
    </message>
    <message>
        <source>The gap of the first layer and whole layers own it: pages First layer and Bed plane.</source>
        <translation>Verantwortlich sind der Spalt der ersten Schicht und ganze Schichten: Seiten Erste Schicht und Bettebene.</translation>
    </message>
    <message>
        <source>Pieces kept: {count}, all before the newest change of settings or machine. Print and measure new ones: ten at least for a promise.</source>
        <translation>Behaltene Stücke: {count}, alle vor der letzten Änderung an Einstellungen oder Maschine. Neue drucken und messen: für eine Zusage mindestens zehn.</translation>
    </message>
    <message>
        <source>No piece of this machine and lot is kept yet. Keep one size trial for each piece; ten pieces at least make a promise.</source>
        <translation>Für diese Maschine und Charge ist noch kein Stück behalten. Je Stück einen Maßversuch behalten; eine Zusage braucht mindestens zehn Stücke.</translation>
    </message>
    <message>
        <source>{group}: {why}</source>
        <translation>{group}: {why}</translation>
    </message>
    <message>
        <source>{group}: ±{promised:.2f} mm from {shortest:g} to {longest:g} mm may be promised ({pieces} parts; 95 % of parts, 95 % confidence).</source>
        <translation>{group}: ±{promised:.2f} mm von {shortest:g} bis {longest:g} mm können zugesagt werden ({pieces} Teile; 95 % der Teile, 95 % Vertrauen).</translation>
    </message>
    <message>
        <source>{base} {klass} is not held at any length.</source>
        <translation>{base} {klass} wird bei keiner Länge eingehalten.</translation>
    </message>
    <message>
        <source>{base} {klass} is not held; {other} is.</source>
        <translation>{base} {klass} wird nicht eingehalten; {other} schon.</translation>
    </message>
    <message>
        <source>{base} {klass} is held at all these lengths.</source>
        <translation>{base} {klass} wird bei allen diesen Längen eingehalten.</translation>
    </message>
    <message>
        <source>{base} {klass} is held up to {length:.0f} mm.</source>
        <translation>{base} {klass} wird bis {length:.0f} mm eingehalten.</translation>
    </message>
    <message>
        <source>Not claimed: sizes that were not measured, form, surface, strength, fitness for food, medical or child use. Load-bearing and safety parts need the responsible engineer.</source>
        <translation>Nicht zugesagt: nicht gemessene Maße, Form, Oberfläche, Festigkeit, Eignung für Lebensmittel, Medizin oder Kinder. Tragende und sicherheitsrelevante Teile gehören in die Verantwortung der zuständigen Ingenieure.</translation>
    </message>
    <message>
        <source>What sizes may be expected</source>
        <translation>Welche Maße zu erwarten sind</translation>
    </message>
    <message>
        <source>Drawing, revision</source>
        <translation>Zeichnung, Änderungsstand</translation>
    </message>
    <message>
        <source>Condition (age, °C, humidity)</source>
        <translation>Zustand (Alter, °C, Feuchte)</translation>
    </message>
    <message>
        <source>Promise</source>
        <translation>Zusage</translation>
    </message>
    <message>
        <source>It rests on {count} measured parts: trials № {numbers}.</source>
        <translation>Sie beruht auf {count} gemessenen Teilen: Versuche № {numbers}.</translation>
    </message>
    <message>
        <source>First article, trial № {number}</source>
        <translation>Erstmuster, Versuch № {number}</translation>
    </message>
    <message>
        <source>Decision rule: a size is accepted where it lies inside its tolerance with 95 % probability, refused where it lies outside by more than the guard band; between the two nothing is proved (JCGM 106, ISO 14253-1).</source>
        <translation>Entscheidungsregel: Ein Maß wird angenommen, wo es mit 95 % Wahrscheinlichkeit in seiner Toleranz liegt, und abgelehnt, wo es um mehr als den Sicherheitsabstand außerhalb liegt; dazwischen ist nichts nachgewiesen (JCGM 106, ISO 14253-1).</translation>
    </message>
    <message>
        <source>Predicted beforehand, then measured</source>
        <translation>Vorab vorhergesagt, dann gemessen</translation>
    </message>
    <message>
        <source>Measured and checked by</source>
        <translation>Gemessen und geprüft von</translation>
    </message>
    <message>
        <source>Promise: {machine}</source>
        <translation>Zusage: {machine}</translation>
    </message>
    <message>
        <source>Nothing can be promised yet: fewer than ten parts of each kind were measured.</source>
        <translation>Noch kann nichts zugesagt werden: Von jeder Art wurden weniger als zehn Teile gemessen.</translation>
    </message>
    <message>
        <source>{group} ±{mm:.2f} mm</source>
        <translation>{group} ±{mm:.2f} mm</translation>
    </message>
    <message>
        <source>Parts of {lot} printed on {machine} were measured. Of 100 parts at least 95 keep to {widths}. This holds with 95 % confidence for the sizes that were measured and for nothing else.</source>
        <translation>Gemessen wurden Teile aus {lot}, gedruckt auf {machine}. Von 100 Teilen halten mindestens 95 {widths} ein. Das gilt mit 95 % Vertrauen für die gemessenen Maße und für nichts anderes.</translation>
    </message>
    <message>
        <source>Features</source>
        <translation>Merkmale</translation>
    </message>
    <message>
        <source>Parts</source>
        <translation>Teile</translation>
    </message>
    <message>
        <source>From, mm</source>
        <translation>Von, mm</translation>
    </message>
    <message>
        <source>To, mm</source>
        <translation>Bis, mm</translation>
    </message>
    <message>
        <source>Mean error, mm</source>
        <translation>Mittlerer Fehler, mm</translation>
    </message>
    <message>
        <source>Spread, mm</source>
        <translation>Streuung, mm</translation>
    </message>
    <message>
        <source>Promise, mm</source>
        <translation>Zusage, mm</translation>
    </message>
    <message>
        <source>Cpk at least ({label})</source>
        <translation>Cpk mindestens ({label})</translation>
    </message>
    <message>
        <source>accepted</source>
        <translation>angenommen</translation>
    </message>
    <message>
        <source>refused</source>
        <translation>abgelehnt</translation>
    </message>
    <message>
        <source>not proved</source>
        <translation>nicht nachgewiesen</translation>
    </message>
    <message>
        <source>± {mm:g} mm</source>
        <translation>± {mm:g} mm</translation>
    </message>
    <message>
        <source>Feature</source>
        <translation>Merkmal</translation>
    </message>
    <message>
        <source>Nominal, mm</source>
        <translation>Nennmaß, mm</translation>
    </message>
    <message>
        <source>Tolerance, mm ({label})</source>
        <translation>Toleranz, mm ({label})</translation>
    </message>
    <message>
        <source>Measured ± U, mm</source>
        <translation>Gemessen ± U, mm</translation>
    </message>
    <message>
        <source>Decision</source>
        <translation>Entscheidung</translation>
    </message>
    <message>
        <source>Predicted error ± U, mm</source>
        <translation>Vorhergesagter Fehler ± U, mm</translation>
    </message>
    <message>
        <source>Measured error, mm</source>
        <translation>Gemessener Fehler, mm</translation>
    </message>
    <message>
        <source>E_n</source>
        <translation>E_n</translation>
    </message>
    <message>
        <source>nozzle {mm:g}&#xa0;mm</source>
        <translation>Düse {mm:g}&#xa0;mm</translation>
    </message>
    <message>
        <source>{group} ±{mm:.2f} mm, up to {length:g} mm</source>
        <translation>{group} ±{mm:.2f} mm, bis {length:g} mm</translation>
    </message>
    <message>
        <source>shown for {material}</source>
        <translation>nachgewiesen für {material}</translation>
    </message>
    <message>
        <source>no tolerance promised</source>
        <translation>keine Toleranz zugesagt</translation>
    </message>
    <message>
        <source>shown {day}, due {due}</source>
        <translation>nachgewiesen {day}, fällig {due}</translation>
    </message>
    <message>
        <source>measured {day}</source>
        <translation>gemessen {day}</translation>
    </message>
    <message>
        <source>{side} it gives way by {compliance}: {drag:g} N move it by {moved}. {judged}</source>
        <translation>{side} beträgt die Nachgiebigkeit {compliance}: {drag:g} N verschieben die Achse um {moved}. {judged}</translation>
    </message>
    <message>
        <source>Steps per millimetre, flow factor, contour offset: none of them makes an axis stiff.</source>
        <translation>Schritte/mm, Durchflussfaktor, Konturversatz: nichts davon macht eine Achse steif.</translation>
    </message>
    <message>
        <source>Change nothing now; push again at the next upkeep.</source>
        <translation>Jetzt nichts ändern; bei der nächsten Wartung erneut drücken.</translation>
    </message>
    <message>
        <source>Push harder, up to 20 N, read more pairs, or take a dial of finer graduation.</source>
        <translation>Stärker drücken, bis 20 N, mehr Paare ablesen oder eine Messuhr mit feinerem Skalenwert nehmen.</translation>
    </message>
    <message>
        <source>Take the play out of the slide of {axis}: rollers, bearings, rail screws. Then push again.</source>
        <translation>Das Spiel aus der Führung von {axis} nehmen: Rollen, Lager, Schienenschrauben. Dann erneut drücken.</translation>
    </message>
    <message>
        <source>Look at nut, coupling and the arm that carries Z. Then push again.</source>
        <translation>Mutter, Kupplung und den Arm ansehen, der Z trägt. Dann erneut drücken.</translation>
    </message>
    <message>
        <source>Tighten the belt of {axis}; look for what bends: bracket, idler, arm. Then push again.</source>
        <translation>Riemen von {axis} spannen; suchen, was sich biegt: Halter, Umlenkrolle, Arm. Dann erneut drücken.</translation>
    </message>
    <message>
        <source>Stiff.</source>
        <translation>Steif.</translation>
    </message>
    <message>
        <source>Proved within {limit:g} mm: acceptable.</source>
        <translation>Nachweislich innerhalb {limit:g} mm: annehmbar.</translation>
    </message>
    <message>
        <source>Proved above {limit:g} mm: every drag bends it.</source>
        <translation>Nachweislich über {limit:g} mm: jeder Widerstand verbiegt sie.</translation>
    </message>
    <message>
        <source>Neither within nor above {limit:g} mm is proved.</source>
        <translation>Weder innerhalb noch über {limit:g} mm ist nachgewiesen.</translation>
    </message>
    <message>
        <source>{dof:.0f}</source>
        <translation>{dof:.0f}</translation>
    </message>
    <message>
        <source>k {k:.2f}, degrees of freedom {dof}</source>
        <translation>k {k:.2f}, Freiheitsgrade {dof}</translation>
    </message>
    <message>
        <source>{value} ± {U} mm per 100 mm, k {k:.2f}, degrees of freedom {dof}</source>
        <translation>{value} ± {U} mm je 100 mm, k {k:.2f}, Freiheitsgrade {dof}</translation>
    </message>
    <message>
        <source>{setting}: {action} {because}</source>
        <translation>{setting}: {action} {because}</translation>
    </message>
    <message>
        <source>  Do not touch: {what}</source>
        <translation>  Nicht anfassen: {what}</translation>
    </message>
    <message>
        <source>  {name}: {value} ({remark})</source>
        <translation>  {name}: {value} ({remark})</translation>
    </message>
    <message>
        <source>  {name}: not told; {needs}</source>
        <translation>  {name}: nicht bestimmt; {needs}</translation>
    </message>
    <message>
        <source>  Check: {says}</source>
        <translation>  Prüfen: {says}</translation>
    </message>
    <message>
        <source>Demo shop, invented data</source>
        <translation>Demo-Werkstatt, erfundene Daten</translation>
    </message>
    <message>
        <source>Void after a crash, a belt or nozzle change, or a move until checked again.</source>
        <translation>Nach Kollision, Riemen- oder Düsenwechsel oder Umzug ungültig, bis erneut geprüft.</translation>
    </message>
    <message>
        <source>There is no such machine, filament or part, and nothing of this was measured.</source>
        <translation>Solche Maschinen, Filamente und Teile gibt es nicht, und nichts davon wurde gemessen.</translation>
    </message>
    <message>
        <source>{demo} · {foot}</source>
        <translation>{demo} · {foot}</translation>
    </message>
    <message>
        <source>Slipgauge {version} · made {day} UTC · readings {digest}</source>
        <translation>Slipgauge {version} · erstellt {day} UTC · Messwerte {digest}</translation>
    </message>
    <message>
        <source>filament lot</source>
        <translation>Filamentcharge</translation>
    </message>
    <message>
        <source>Which</source>
        <translation>Welche</translation>
    </message>
    <message>
        <source>{name}, never checked here: no traceability is claimed</source>
        <translation>{name}, hier nie geprüft: keine Rückführung beansprucht</translation>
    </message>
    <message>
        <source>{name}, checked {day} (check № {number})</source>
        <translation>{name}, geprüft {day} (Prüfung № {number})</translation>
    </message>
    <message>
        <source>Quantity</source>
        <translation>Größe</translation>
    </message>
    <message>
        <source>Value ± U (95 %)</source>
        <translation>Wert ± U (95 %)</translation>
    </message>
    <message>
        <source>Remark</source>
        <translation>Bemerkung</translation>
    </message>
    <message>
        <source>Trial № {number}: {subject}</source>
        <translation>Versuch № {number}: {subject}</translation>
    </message>
    <message>
        <source>Verdict</source>
        <translation>Urteil</translation>
    </message>
    <message>
        <source>Do not touch: {what}</source>
        <translation>Nicht anfassen: {what}</translation>
    </message>
    <message>
        <source>Results</source>
        <translation>Ergebnisse</translation>
    </message>
    <message>
        <source>Readings as typed</source>
        <translation>Messwerte wie eingegeben</translation>
    </message>
    <message>
        <source>Trial № {number}</source>
        <translation>Versuch № {number}</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>ja</translation>
    </message>
    <message>
        <source>Values as kept</source>
        <translation>Werte wie behalten</translation>
    </message>
    <message>
        <source>Before drying, g</source>
        <translation>Vor dem Trocknen, g</translation>
    </message>
    <message>
        <source>Now, or dried, g</source>
        <translation>Jetzt oder getrocknet, g</translation>
    </message>
    <message>
        <source>Balance, 1 u, g</source>
        <translation>Waage, 1 u, g</translation>
    </message>
    <message>
        <source>Reading, {unit}</source>
        <translation>Messwert, {unit}</translation>
    </message>
    <message>
        <source>Reading</source>
        <translation>Messwert</translation>
    </message>
    <message>
        <source>Nominal, {unit}</source>
        <translation>Nennmaß, {unit}</translation>
    </message>
    <message>
        <source>As typed</source>
        <translation>Wie eingegeben</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>Excluded</source>
        <translation>Ausgeschlossen</translation>
    </message>
    <message>
        <source>Reason</source>
        <translation>Grund</translation>
    </message>
    <message>
        <source>As it is, mm</source>
        <translation>Wie es ist, mm</translation>
    </message>
    <message>
        <source>Predicted error, mm</source>
        <translation>Vorhergesagt, mm</translation>
    </message>
    <message>
        <source>U, mm</source>
        <translation>U, mm</translation>
    </message>
    <message>
        <source>X, mm</source>
        <translation>X, mm</translation>
    </message>
    <message>
        <source>Y, mm</source>
        <translation>Y, mm</translation>
    </message>
    <message>
        <source>After, min</source>
        <translation>Nach, min</translation>
    </message>
    <message>
        <source>Mark, mm</source>
        <translation>Marke, mm</translation>
    </message>
    <message>
        <source>Length, mm</source>
        <translation>Länge, mm</translation>
    </message>
    <message>
        <source>± of the reference</source>
        <translation>± des Referenzwerts</translation>
    </message>
    <message>
        <source>Step, {unit}</source>
        <translation>Stufe, {unit}</translation>
    </message>
    <message>
        <source>Nominal</source>
        <translation>Nennmaß</translation>
    </message>
    <message>
        <source>± of the reference, {unit}</source>
        <translation>± des Referenzwerts, {unit}</translation>
    </message>
    <message>
        <source>Score, 0 to 4</source>
        <translation>Punkte, 0 bis 4</translation>
    </message>
    <message>
        <source>Score, −5 to 5</source>
        <translation>Punkte, −5 bis 5</translation>
    </message>
    <message>
        <source>Rate, mm³/s</source>
        <translation>Rate, mm³/s</translation>
    </message>
    <message>
        <source>Nozzle, °C</source>
        <translation>Düse, °C</translation>
    </message>
    <message>
        <source>Flow, %</source>
        <translation>Durchfluss, %</translation>
    </message>
    <message>
        <source>Speed, mm/s</source>
        <translation>Geschwindigkeit, mm/s</translation>
    </message>
    <message>
        <source>Crests</source>
        <translation>Wellenberge</translation>
    </message>
    <message>
        <source>First crest, µm</source>
        <translation>Erster Wellenberg, µm</translation>
    </message>
    <message>
        <source>Last crest, µm</source>
        <translation>Letzter Wellenberg, µm</translation>
    </message>
    <message>
        <source>Step</source>
        <translation>Stufe</translation>
    </message>
    <message>
        <source>none on record: no traceability is claimed</source>
        <translation>keines erfasst: keine Rückführung beansprucht</translation>
    </message>
    <message>
        <source>Steps</source>
        <translation>Schritte</translation>
    </message>
    <message>
        <source>Measured</source>
        <translation>Gemessen</translation>
    </message>
    <message>
        <source>Lot</source>
        <translation>Charge</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Tag</translation>
    </message>
    <message>
        <source>Trial</source>
        <translation>Versuch</translation>
    </message>
    <message>
        <source>Nothing was measured on this machine yet.</source>
        <translation>An dieser Maschine wurde noch nichts gemessen.</translation>
    </message>
    <message>
        <source>verified</source>
        <translation>bestätigt</translation>
    </message>
    <message>
        <source>not verified</source>
        <translation>nicht bestätigt</translation>
    </message>
    <message>
        <source>In force</source>
        <translation>Gültig</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Wert</translation>
    </message>
    <message>
        <source>Since</source>
        <translation>Seit</translation>
    </message>
    <message>
        <source>Standing</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>{found} {judged}</source>
        <translation>{found} {judged}</translation>
    </message>
    <message>
        <source>Z axis: nut, coupling, bearing at the end of the screw.</source>
        <translation>Z-Achse: Mutter, Kupplung, Lager am Spindelende.</translation>
    </message>
    <message>
        <source>{axis} axis: grub screw on its flat, belt tension, slide, idler bearing, coupling.</source>
        <translation>{axis}-Achse: Gewindestift auf der Abflachung, Riemenspannung, Führung, Lager der Umlenkrolle, Kupplung.</translation>
    </message>
    <message>
        <source>Change nothing now; look at belt and grub screws at the next upkeep.</source>
        <translation>Jetzt nichts ändern; Riemen und Gewindestifte bei der nächsten Wartung ansehen.</translation>
    </message>
    <message>
        <source>{where} Then measure again.</source>
        <translation>{where} Dann erneut messen.</translation>
    </message>
    <message>
        <source>Tighten the belt and free the slides of {axis}: most of it is wind-up, not play. Then measure again.</source>
        <translation>Riemen spannen und Führungen von {axis} leichtgängig machen: Das meiste ist Verspannung, nicht Spiel. Dann erneut messen.</translation>
    </message>
    <message>
        <source>Take the quick cycle for the whole of it, or go on with further steps.</source>
        <translation>Für das Ganze den Kurzzyklus nehmen oder mit weiteren Schritten fortfahren.</translation>
    </message>
    <message>
        <source>Read with a dial of finer graduation: most of the interval is its last digit.</source>
        <translation>Mit einer Messuhr mit feinerem Skalenwert ablesen: Der Bereich stammt größtenteils von der letzten Stelle.</translation>
    </message>
    <message>
        <source>Read more pairs, slowly, after warming up: the interval is too wide to decide.</source>
        <translation>Mehr Paare ablesen, langsam, nach dem Warmlaufen: Der Bereich ist zu breit für eine Entscheidung.</translation>
    </message>
    <message>
        <source>Reversal error {axis} is {value} ({place}, worst of {places} places; {pairs} pairs).</source>
        <translation>Umkehrspanne {axis} beträgt {value} ({place}, ungünstigste von {places} Stellen; {pairs} Paare).</translation>
    </message>
    <message>
        <source>Reversal error {axis} is {value} (at {target:g} mm, worst of {targets} targets).</source>
        <translation>Umkehrspanne {axis} beträgt {value} (bei {target:g} mm, ungünstigstes von {targets} Zielen).</translation>
    </message>
    <message>
        <source>Along {axis} {value} are lost in {run:g} mm: play {play}, then {share:.0f} % of the command arrives.</source>
        <translation>Längs {axis} gehen auf {run:g} mm {value} verloren: Spiel {play}, danach kommen {share:.0f} % des Sollwegs an.</translation>
    </message>
    <message>
        <source>The loss still grows at the end of the curve, so the reversal error is larger.</source>
        <translation>Der Verlust wächst am Ende der Kurve noch, die Umkehrspanne ist also größer.</translation>
    </message>
    <message>
        <source>Proved within {limit:g} mm: good.</source>
        <translation>Nachweislich innerhalb {limit:g} mm: gut.</translation>
    </message>
    <message>
        <source>Proved within {limit:g} mm: acceptable. Closed outlines come out smaller by it.</source>
        <translation>Nachweislich innerhalb {limit:g} mm: annehmbar. Geschlossene Konturen fallen um so viel kleiner aus.</translation>
    </message>
    <message>
        <source>Proved above {limit:g} mm: closed outlines, windows too, come out smaller by it.</source>
        <translation>Nachweislich über {limit:g} mm: Geschlossene Konturen, auch Fenster, fallen um so viel kleiner aus.</translation>
    </message>
    <message>
        <source>Were the motors powered? If not, the slack of the rotor is in it.</source>
        <translation>Waren die Motoren bestromt? Wenn nicht, steckt die Lose des Läufers mit darin.</translation>
    </message>
    <message>
        <source>Z rests on its nut by weight: play there shows only where something lifts it.</source>
        <translation>Z ruht durch sein Gewicht auf der Mutter: Spiel zeigt sich dort nur, wo etwas anhebt.</translation>
    </message>
    <message>
        <source>On crossed belts a reversal of {axis} reverses both motors: look at both belts.</source>
        <translation>Bei gekreuzten Riemen kehrt eine Umkehr von {axis} beide Motoren um: beide Riemen ansehen.</translation>
    </message>
    <message>
        <source>Log again while the machine shakes: a rattle of quick moves to and fro along this axis.</source>
        <translation>Erneut aufzeichnen, während die Maschine rüttelt: schnelle kurze Hin- und Herbewegungen längs dieser Achse.</translation>
    </message>
    <message>
        <source>In {count} averaged pieces nothing from {low:g} to {high:g} Hz stands out from the noise.</source>
        <translation>In {count} gemittelten Abschnitten hebt sich von {low:g} bis {high:g} Hz nichts vom Rauschen ab.</translation>
    </message>
    <message>
        <source>Acceleration, speed: nothing is proved yet.</source>
        <translation>Beschleunigung, Geschwindigkeit: noch ist nichts nachgewiesen.</translation>
    </message>
    <message>
        <source>The highest peak is at {highest:.1f} Hz; at {own:.1f} Hz the machine moves further, so that one counts.</source>
        <translation>Die höchste Spitze liegt bei {highest:.1f} Hz; bei {own:.1f} Hz bewegt sich die Maschine weiter, deshalb zählt diese.</translation>
    </message>
    <message>
        <source>Mend what repeats there: {parts}.</source>
        <translation>Instand setzen, was sich dort wiederholt: {parts}.</translation>
    </message>
    <message>
        <source>Look for a part that repeats with this length: a roller, a bearing, an eccentric pulley.</source>
        <translation>Ein Teil suchen, das sich mit dieser Länge wiederholt: eine Rolle, ein Lager, eine unrund laufende Riemenscheibe.</translation>
    </message>
    <message>
        <source>The marks lie {value} ± {U} mm apart whatever the speed, so it is not ringing.</source>
        <translation>Die Abdrücke liegen bei jeder Geschwindigkeit {value} ± {U} mm auseinander, es ist also kein Nachschwingen.</translation>
    </message>
    <message>
        <source>Acceleration and speed: they do not move these marks.</source>
        <translation>Beschleunigung und Geschwindigkeit: sie verschieben diese Abdrücke nicht.</translation>
    </message>
    <message>
        <source>Count the crests again, away from corners, at three speeds.</source>
        <translation>Die Wellenberge erneut zählen, fern von Ecken, bei drei Geschwindigkeiten.</translation>
    </message>
    <message>
        <source>It goes with the speed as ringing does, but {hz:.3g} Hz is nothing that a frame rings at ({low:g} to {high:g} Hz).</source>
        <translation>Es geht wie Nachschwingen mit der Geschwindigkeit, aber mit {hz:.3g} Hz schwingt kein Gestell nach ({low:g} bis {high:g} Hz).</translation>
    </message>
    <message>
        <source>The wavelength goes as speed to the power {power} ± {U}: neither ringing (1) nor a mark (0).</source>
        <translation>Die Wellenlänge geht mit der Geschwindigkeit hoch {power} ± {U}: weder Nachschwingen (1) noch Abdruck (0).</translation>
    </message>
    <message>
        <source>The ringing allows all of this machine&apos;s {most:.0f} mm/s².</source>
        <translation>Das Nachschwingen lässt die vollen {most:.0f} mm/s² dieser Maschine zu.</translation>
    </message>
    <message>
        <source>Accelerate {axis} with at most {limit:.0f} mm/s² on walls that are seen.</source>
        <translation>{axis} bei sichtbaren Wänden mit höchstens {limit:.0f} mm/s² beschleunigen.</translation>
    </message>
    <message>
        <source>{axis} rings at {hz} ± {U} Hz with {payload:g} g on the bed; a ripple of {visible:g} mm is that of {limit} ± {U_limit} mm/s².</source>
        <translation>{axis} schwingt mit {payload:g} g auf dem Bett bei {hz} ± {U} Hz nach; eine Welle von {visible:g} mm gehört zu {limit} ± {U_limit} mm/s².</translation>
    </message>
    <message>
        <source>Steps per millimetre, flow factor: ringing is none of theirs.</source>
        <translation>Schritte/mm, Durchflussfaktor: Nachschwingen kommt nicht von ihnen.</translation>
    </message>
    <message>
        <source>Ringing stretches with the speed, a mark does not; so far these readings do not tell.</source>
        <translation>Nachschwingen streckt sich mit der Geschwindigkeit, ein Abdruck nicht; bisher entscheiden diese Messwerte nichts.</translation>
    </message>
    <message>
        <source>It could be a mark of: {parts}. Ringing stretches with the speed, a mark does not.</source>
        <translation>Es könnte ein Abdruck sein von: {parts}. Nachschwingen streckt sich mit der Geschwindigkeit, ein Abdruck nicht.</translation>
    </message>
    <message>
        <source>Print the wall at {speed:.0f} mm/s too, count there; what follows holds if it is ringing.</source>
        <translation>Die Wand auch mit {speed:.0f} mm/s drucken und dort zählen; das Folgende gilt, falls es Nachschwingen ist.</translation>
    </message>
    <message>
        <source>Print the wall at {speed:.0f} mm/s too, and count there.</source>
        <translation>Die Wand auch mit {speed:.0f} mm/s drucken und dort zählen.</translation>
    </message>
    <message>
        <source>As ringing it would be {hz} ± {U} Hz, and frames ring at {low:g} to {high:g} Hz. It could be a mark of: {parts}; or crests were miscounted. A mark stays where it is at the second speed.</source>
        <translation>Als Nachschwingen wären es {hz} ± {U} Hz, und Gestelle schwingen mit {low:g} bis {high:g} Hz nach. Es kann ein Abdruck sein von: {parts}; oder die Wellenberge sind falsch gezählt. Ein Abdruck bleibt bei der zweiten Geschwindigkeit, wo er ist.</translation>
    </message>
    <message>
        <source>As ringing it would be {hz} ± {U} Hz, and frames ring at {low:g} to {high:g} Hz. It could be a mark of a part that repeats, or crests were miscounted. A mark stays where it is at the second speed.</source>
        <translation>Als Nachschwingen wären es {hz} ± {U} Hz, und Gestelle schwingen mit {low:g} bis {high:g} Hz nach. Es kann der Abdruck eines Teils sein, das sich wiederholt, oder die Wellenberge sind falsch gezählt. Ein Abdruck bleibt bei der zweiten Geschwindigkeit, wo er ist.</translation>
    </message>
    <message>
        <source>The ripple may be twice as high: halve the acceleration if it is still seen.</source>
        <translation>Die Welle kann doppelt so hoch sein: Beschleunigung halbieren, falls sie noch zu sehen ist.</translation>
    </message>
    <message>
        <source>At {speed:g} mm/s ramps of {listed} mm/s² last whole periods and cancel their own ripple.</source>
        <translation>Bei {speed:g} mm/s dauern Rampen mit {listed} mm/s² ganze Perioden und löschen ihre eigene Welle aus.</translation>
    </message>
    <message>
        <source>A heavier part on a moving bed rings lower, as 1/√mass: read it again with the heaviest part.</source>
        <translation>Ein schwereres Teil auf bewegtem Bett schwingt tiefer, mit 1/√Masse: mit dem schwersten Teil erneut messen.</translation>
    </message>
    <message>
        <source>Count the parts of the {axis} drive again and mend the entry or the part.</source>
        <translation>Die Teile des Antriebs {axis} nachzählen und den Eintrag oder das Teil berichtigen.</translation>
    </message>
    <message>
        <source>Enter the parts of the {axis} drive; then count them again.</source>
        <translation>Die Teile des Antriebs {axis} eintragen, dann nachzählen.</translation>
    </message>
    <message>
        <source>Steps per millimetre by trimming, shrink allowance, flow factor.</source>
        <translation>Schritte/mm nach Gefühl, Schwindzugabe, Durchflussfaktor.</translation>
    </message>
    <message>
        <source>Scale {axis} is off by {value}, more than any belt, screw or usual filament ({basis}).</source>
        <translation>Der Maßstab {axis} weicht um {value} ab, mehr als Riemen, Spindel oder übliches Filament je ausmachen ({basis}).</translation>
    </message>
    <message>
        <source>{base} No single wrong part of the catalogue explains it: look for a unit or a wrong file.</source>
        <translation>{base} Kein einzelnes falsches Teil des Katalogs erklärt das: nach einer Einheit oder einer falschen Datei suchen.</translation>
    </message>
    <message>
        <source>{first} Or: {second}</source>
        <translation>{first} Oder: {second}</translation>
    </message>
    <message>
        <source>{base} It would fit: {hits}</source>
        <translation>{base} Passen würde: {hits}</translation>
    </message>
    <message>
        <source>a screw of 4 starts, 2 mm pitch</source>
        <translation>eine Spindel mit 4 Gängen, 2 mm Teilung</translation>
    </message>
    <message>
        <source>a 2 mm belt on 20 teeth</source>
        <translation>ein 2-mm-Riemen auf 20 Zähnen</translation>
    </message>
    <message>
        <source>{base} No drive is on record; for {usual} it would fit: {hits}</source>
        <translation>{base} Kein Antrieb ist erfasst; bei üblichem Antrieb ({usual}) würde passen: {hits}</translation>
    </message>
    <message>
        <source>X and Y differ by {value} on the same print; shrinkage is alike in both, so this is the machine.</source>
        <translation>X und Y weichen auf demselben Druck um {value} voneinander ab; die Schwindung ist in beiden gleich, also ist es die Maschine.</translation>
    </message>
    <message>
        <source>Look at slides, frame and bead width by direction: crossed belts cannot make X differ from Y.</source>
        <translation>Führungen, Gestell und Raupenbreite je Richtung ansehen: Gekreuzte Riemen können X nicht von Y abweichen lassen.</translation>
    </message>
    <message>
        <source>Find why one axis runs longer: belt tension and seating, pulley run-out, a fibre-filled material.</source>
        <translation>Suchen, warum eine Achse länger läuft: Spannung und Sitz des Riemens, Rundlauf der Riemenscheibe, faserverstärktes Material.</translation>
    </message>
    <message>
        <source>Separate steps per millimetre for X and Y, shrink allowance.</source>
        <translation>Getrennte Schritte/mm für X und Y, Schwindzugabe.</translation>
    </message>
    <message>
        <source>Scale error {axes}</source>
        <translation>Maßstabsfehler {axes}</translation>
    </message>
    <message>
        <source>Compare the steps in the controller with the calculated ones; was the part drawn larger already?</source>
        <translation>Die Schritte in der Steuerung mit den berechneten vergleichen; war das Teil schon größer gezeichnet?</translation>
    </message>
    <message>
        <source>{named} is {value}: parts too large are not shrinkage ({basis}).</source>
        <translation>{named} beträgt {value}: Zu große Teile sind keine Schwindung ({basis}).</translation>
    </message>
    <message>
        <source>Measure the travel itself with a dial or a drawn line, or print with a second filament.</source>
        <translation>Den Verfahrweg selbst mit Messuhr oder gezeichneter Linie messen oder mit einem zweiten Filament drucken.</translation>
    </message>
    <message>
        <source>{named} is {value}; a smooth wheel may be off by as much.</source>
        <translation>{named} beträgt {value}; ein glattes Rad kann ebenso viel ausmachen.</translation>
    </message>
    <message>
        <source>the drive leaves about {percent:.2f} %</source>
        <translation>der Antrieb lässt etwa {percent:.2f} % offen</translation>
    </message>
    <message>
        <source>the drive may be off by as much, {percent:.2f} %</source>
        <translation>der Antrieb kann ebenso viel ausmachen, {percent:.2f} %</translation>
    </message>
    <message>
        <source>Draw parts of this filament {allowance} times as large along {axes}.</source>
        <translation>Teile aus diesem Filament längs {axes} mit Faktor {allowance} zeichnen.</translation>
    </message>
    <message>
        <source>{named} is {value} and {share}, so it is booked to the filament ({basis}); one print cannot tell how much of it is the machine&apos;s.</source>
        <translation>{named} beträgt {value}, und {share}; er wird deshalb dem Filament zugerechnet ({basis}). Wie viel davon von der Maschine stammt, zeigt ein einzelner Druck nicht.</translation>
    </message>
    <message>
        <source>Steps per millimetre, flow factor.</source>
        <translation>Schritte/mm, Durchflussfaktor.</translation>
    </message>
    <message>
        <source>{action} Both motors move X and Y: give both the same steps, never two.</source>
        <translation>{action} Beide Motoren bewegen X und Y: beiden dieselben Schritte geben, nie zweierlei.</translation>
    </message>
    <message>
        <source>Look at slides, frame and belt tension: crossed belts cannot make X differ from Y.</source>
        <translation>Führungen, Gestell und Riemenspannung ansehen: Gekreuzte Riemen können X nicht von Y abweichen lassen.</translation>
    </message>
    <message>
        <source>The travel of X and Y differs by {value}.</source>
        <translation>Der Verfahrweg von X und Y unterscheidet sich um {value}.</translation>
    </message>
    <message>
        <source>Separate steps per millimetre for X and Y: they would shear every part.</source>
        <translation>Getrennte Schritte/mm für X und Y: sie würden jedes Teil verscheren.</translation>
    </message>
    <message>
        <source>Travel of {axis}</source>
        <translation>Verfahrweg {axis}</translation>
    </message>
    <message>
        <source>The {axis} axis itself travels {value} off; no filament is in this.</source>
        <translation>Die {axis}-Achse selbst verfährt um {value} falsch; Filament ist hier nicht beteiligt.</translation>
    </message>
    <message>
        <source>Enter the parts of the {axis} drive: they say what may be off.</source>
        <translation>Die Teile des Antriebs {axis} eintragen: Sie sagen, wie viel er abweichen kann.</translation>
    </message>
    <message>
        <source>Look at belt tension, seating, run-out and the dial&apos;s alignment, and count the parts of {axis} again.</source>
        <translation>Riemenspannung, Sitz, Rundlauf und Ausrichtung der Messuhr ansehen und die Teile von {axis} nachzählen.</translation>
    </message>
    <message>
        <source>Steps per millimetre: these parts are good to {percent:.2f} %.</source>
        <translation>Schritte/mm: diese Teile sind auf {percent:.2f} % genau.</translation>
    </message>
    <message>
        <source>Multiply the steps per millimetre of {axis} in force by {factor}, then measure the travel again.</source>
        <translation>Die gültigen Schritte/mm von {axis} mit {factor} multiplizieren, dann den Verfahrweg erneut messen.</translation>
    </message>
    <message>
        <source>Shrink allowance, flow factor.</source>
        <translation>Schwindzugabe, Durchflussfaktor.</translation>
    </message>
    <message>
        <source>So far {percent:.0f} % of {count} predicted features (pieces: {pieces}) lay inside their U ({low:.0f} to {high:.0f} %; 95 % are due).</source>
        <translation>Bisher lagen {percent:.0f} % von {count} vorhergesagten Merkmalen (Stücke: {pieces}) innerhalb ihrer U ({low:.0f} bis {high:.0f} %; Soll: 95 %).</translation>
    </message>
    <message>
        <source>{base} From {count} pieces on it tells of our U.</source>
        <translation>{base} Ab {count} Stücken sagt das etwas über die angegebene U.</translation>
    </message>
    <message>
        <source>{base} Our U is too small: multiply it by {factor:.2f} ({low:.2f} to {high:.2f}).</source>
        <translation>{base} Die angegebene U ist zu klein: mit {factor:.2f} multiplizieren ({low:.2f} bis {high:.2f}).</translation>
    </message>
    <message>
        <source>{base} Nothing shows that our U is too small.</source>
        <translation>{base} Nichts zeigt, dass die angegebene U zu klein ist.</translation>
    </message>
    <message>
        <source>Nothing here tells the cross-section yet: read pairs of diameters, or weigh a length.</source>
        <translation>Den Querschnitt zeigt hier noch nichts: Durchmesser paarweise ablesen oder eine Länge wägen.</translation>
    </message>
    <message>
        <source>Keep {old:g} mm.</source>
        <translation>{old:g} mm beibehalten.</translation>
    </message>
    <message>
        <source>{count} equal readings are rather the label than the instrument.</source>
        <translation>{count} gleiche Messwerte sind eher das Etikett als das Messmittel.</translation>
    </message>
    <message>
        <source>Read again and type what the instrument shows.</source>
        <translation>Erneut messen und eingeben, was das Messmittel anzeigt.</translation>
    </message>
    <message>
        <source>{d}, {area} of the cross-section set: within 0.02 mm; the flow factor takes up the rest.</source>
        <translation>{d}, {area} des eingestellten Querschnitts: innerhalb 0,02 mm; den Rest nimmt der Durchflussfaktor auf.</translation>
    </message>
    <message>
        <source>{d}, {area} of the cross-section set: not told from it.</source>
        <translation>{d}, {area} des eingestellten Querschnitts: davon nicht zu unterscheiden.</translation>
    </message>
    <message>
        <source>Leave {old:g} mm.</source>
        <translation>{old:g} mm belassen.</translation>
    </message>
    <message>
        <source>{d}: the cross-section would be {area} of the one set, but this way cannot tell 0.02 mm from none.</source>
        <translation>{d}: Der Querschnitt wäre {area} des eingestellten, aber so lassen sich 0,02 mm nicht von null unterscheiden.</translation>
    </message>
    <message>
        <source>Keep {old:g} mm; read with a micrometer, or weigh 1 m with a known density.</source>
        <translation>{old:g} mm beibehalten; mit einer Messschraube messen oder 1 m bei bekannter Dichte wägen.</translation>
    </message>
    <message>
        <source>{d}: the cross-section is {area} of the one set.</source>
        <translation>{d}: Der Querschnitt ist {area} des eingestellten.</translation>
    </message>
    <message>
        <source>Set {new:.3f} mm instead of {old:g} mm.</source>
        <translation>{new:.3f} mm statt {old:g} mm einstellen.</translation>
    </message>
    <message>
        <source>Ovality {oval}, spread along the length {spread}. Set from one-way readings the flow would be up to {flow} % low.</source>
        <translation>Ovalität {oval}, Streuung entlang der Länge {spread}. Nach Messwerten in nur einer Richtung eingestellt, wäre der Durchfluss bis zu {flow} % zu niedrig.</translation>
    </message>
    <message>
        <source>Return it: more than 0.1 mm out of round jams and makes bands.</source>
        <translation>Zurückgeben: Mehr als 0,1 mm Unrundheit klemmt und macht Streifen.</translation>
    </message>
    <message>
        <source>Not for tolerance work: above 0.05 mm ovality or 0.02 mm spread.</source>
        <translation>Nicht für maßhaltige Teile: über 0,05 mm Ovalität oder 0,02 mm Streuung.</translation>
    </message>
    <message>
        <source>The gauge says {gauge}, the mass says {mass}. A strand with three lobes has one width all round and fools any jaws; or length, density or zero are off.</source>
        <translation>Das Messmittel sagt {gauge}, die Masse sagt {mass}. Ein Strang mit drei Buckeln ist ein Gleichdick und täuscht jede Messung mit zwei Schenkeln; oder Länge, Dichte oder Nullpunkt stimmen nicht.</translation>
    </message>
    <message>
        <source>Keep {old:g} mm; weigh another metre and check the zero.</source>
        <translation>{old:g} mm beibehalten; einen weiteren Meter wägen und den Nullpunkt prüfen.</translation>
    </message>
    <message>
        <source>Flow factor and extruder steps: they do not change the strand.</source>
        <translation>Durchflussfaktor und Extruderschritte: sie ändern den Strang nicht.</translation>
    </message>
    <message>
        <source>{what}: {value}, at most {effect} mm where ±{tolerance:g} mm is allowed.</source>
        <translation>{what}: {value}, höchstens {effect} mm bei zulässigen ±{tolerance:g} mm.</translation>
    </message>
    <message>
        <source>Steps per millimetre, flow factor, contour offset.</source>
        <translation>Schritte/mm, Durchflussfaktor, Konturversatz.</translation>
    </message>
    <message>
        <source>Read every feature again, or add features: the interval is too wide to decide.</source>
        <translation>Jedes Merkmal erneut messen oder Merkmale hinzufügen: Der Bereich ist zu breit für eine Entscheidung.</translation>
    </message>
    <message>
        <source>{what}: {value}; ±{tolerance:g} mm is allowed, and neither small nor real is proved.</source>
        <translation>{what}: {value}; zulässig sind ±{tolerance:g} mm. Nachgewiesen ist weder ein kleiner noch ein echter Fehler.</translation>
    </message>
    <message>
        <source>A number has 0 to {most} decimals, not {count}.</source>
        <translation>Eine Zahl hat 0 bis {most} Nachkommastellen, nicht {count}.</translation>
    </message>
    <message>
        <source>Line {number} of the template: write a name, a colon, and a command with {place} behind its letter, for example {example}.</source>
        <translation>Zeile {number} der Vorlage: einen Namen, einen Doppelpunkt und einen Befehl mit {place} hinter seinem Buchstaben schreiben, zum Beispiel {example}.</translation>
    </message>
    <message>
        <source>Line {number} of the template names {name} again.</source>
        <translation>Zeile {number} der Vorlage nennt {name} ein zweites Mal.</translation>
    </message>
    <message>
        <source>The listing has none of the commands of the template in it; paste what the controller answered.</source>
        <translation>Die Auflistung enthält keinen der Befehle der Vorlage; einfügen, was die Steuerung geantwortet hat.</translation>
    </message>
    <message>
        <source>{command}: the controller has {found}; here nothing is on record.</source>
        <translation>{command}: Die Steuerung hat {found}; hier ist nichts erfasst.</translation>
    </message>
    <message>
        <source>{command}: not in the listing; {here} is in force.</source>
        <translation>{command}: nicht in der Auflistung; gültig ist {here}.</translation>
    </message>
    <message>
        <source>{command}: the controller has {found}, in force is {here}.</source>
        <translation>{command}: Die Steuerung hat {found}, gültig ist {here}.</translation>
    </message>
    <message>
        <source>No kept size trial names its machine and lot yet. Keep one on the page Size error for each machine and lot; two machines and two lots that share a print tell most.</source>
        <translation>Noch nennt kein behaltener Maßversuch seine Maschine und Charge. Auf der Seite Maßabweichung für jede Maschine und Charge einen behalten; am meisten sagen zwei Maschinen und zwei Chargen mit einem gemeinsamen Druck.</translation>
    </message>
    <message>
        <source>X less Y of {machine} is {value} (prints: {prints}); shrinkage is alike in both, so this is the machine.</source>
        <translation>X minus Y von {machine} beträgt {value} (Drucke: {prints}); die Schwindung ist in beiden gleich, also ist es die Maschine.</translation>
    </message>
    <message>
        <source>Print this file with the same lot on a second machine to make sure.</source>
        <translation>Zur Sicherheit diese Datei mit derselben Charge auf einer zweiten Maschine drucken.</translation>
    </message>
    <message>
        <source>Only one machine and one lot along {axis}: {percent:+.2f} % may belong to either. By the drive&apos;s own tolerance about {share:.0f} % of it is booked to the filament.</source>
        <translation>Nur eine Maschine und eine Charge längs {axis}: {percent:+.2f} % können zu beiden gehören. Nach der Toleranz des Antriebs werden davon etwa {share:.0f} % dem Filament zugerechnet.</translation>
    </message>
    <message>
        <source>Look at this print again: warm when read, another caliper, a damp or wrong lot? Withdraw it if so.</source>
        <translation>Diesen Druck noch einmal ansehen: beim Messen warm, anderer Messschieber, feuchte oder falsche Charge? Wenn ja, zurückziehen.</translation>
    </message>
    <message>
        <source>Disagrees with what all the others say of its machine and lot: trial № {trials}; it still counts.</source>
        <translation>Widerspricht allem, was die anderen über Maschine und Charge sagen: Versuch № {trials}; er zählt weiterhin.</translation>
    </message>
    <message>
        <source>Print {lot} on {machine}: it joins them.</source>
        <translation>{lot} auf {machine} drucken: Das verbindet sie.</translation>
    </message>
    <message>
        <source>No print links {names} with the others: only the tolerance of the drives compares them.</source>
        <translation>Kein Druck verbindet {names} mit den anderen: Nur die Toleranz der Antriebe vergleicht sie.</translation>
    </message>
    <message>
        <source>Read the travel of a machine without filament: a drawn line, or a dial against gauge blocks.</source>
        <translation>Den Verfahrweg einer Maschine ohne Filament messen: gezeichnete Linie oder Messuhr gegen Endmaße.</translation>
    </message>
    <message>
        <source>No single print would tell much more along {axis}: what all machines share is left.</source>
        <translation>Kein einzelner Druck würde längs {axis} viel mehr zeigen: Übrig ist, was alle Maschinen gemeinsam haben.</translation>
    </message>
    <message>
        <source>Next best print: {lot} on {machine}.</source>
        <translation>Bester nächster Druck: {lot} auf {machine}.</translation>
    </message>
    <message>
        <source>It tells most: {of} along {axis} goes from ±{before} to ±{after} %.</source>
        <translation>Er zeigt am meisten: {of} längs {axis} geht von ±{before} auf ±{after} %.</translation>
    </message>
    <message>
        <source>row {number}</source>
        <translation>Zeile {number}</translation>
    </message>
    <message>
        <source>Gauge {gauge} brings {parameter} nearer to being told.</source>
        <translation>Messstelle {gauge} bringt der Bestimmung näher: {parameter}.</translation>
    </message>
    <message>
        <source>Gauge {gauge} tells {parameter}.</source>
        <translation>Messstelle {gauge} bestimmt: {parameter}.</translation>
    </message>
    <message>
        <source>{gauge}, once more,</source>
        <translation>{gauge}, noch einmal,</translation>
    </message>
    <message>
        <source>Gauge {gauge} takes the standard uncertainty of {parameter} from {now} to {then} {unit}.</source>
        <translation>Messstelle {gauge} senkt die Standardunsicherheit ({parameter}) von {now} auf {then} {unit}.</translation>
    </message>
    <message>
        <source>Steps and flow factor: neither cures slip.</source>
        <translation>Schritte und Durchflussfaktor: keines von beiden behebt Schlupf.</translation>
    </message>
    <message>
        <source>Feed 5 repeats at 4 rates or more: a knee is not looked for in fewer.</source>
        <translation>5 Wiederholungen bei mindestens 4 Raten fördern: Bei weniger wird kein Knick gesucht.</translation>
    </message>
    <message>
        <source>Repeats under load so far: {count}, rates: {rates}.</source>
        <translation>Wiederholungen unter Last bisher: {count}, Raten: {rates}.</translation>
    </message>
    <message>
        <source>{holds}{against}</source>
        <translation>{holds}{against}</translation>
    </message>
    <message>
        <source>{level} is fed, alike at all rates. {because}</source>
        <translation>Gefördert werden {level}, bei allen Raten gleich. {because}</translation>
    </message>
    <message>
        <source>No slip is proved up to {rate:g} mm³/s.</source>
        <translation>Bis {rate:g} mm³/s ist kein Schlupf nachgewiesen.</translation>
    </message>
    <message>
        <source>No slip is proved up to {rate:.3g} mm³/s; print at most at {sure:.3g} mm³/s until the ceiling is measured.</source>
        <translation>Bis {rate:.3g} mm³/s ist kein Schlupf nachgewiesen; mit höchstens {sure:.3g} mm³/s drucken, bis die Grenze gemessen ist.</translation>
    </message>
    <message>
        <source>At {rate:g} mm³/s {share} is fed{loss}. {because}</source>
        <translation>Bei {rate:g} mm³/s werden {share} gefördert{loss}. {because}</translation>
    </message>
    <message>
        <source>; 0.5 % is lost at {rate}</source>
        <translation>; 0,5 % gehen verloren bei {rate}</translation>
    </message>
    <message>
        <source> Slow under load it is {level}, without load {free}: drag of the spool, a worn wheel, a blocked nozzle.</source>
        <translation> Langsam unter Last sind es {level}, ohne Last {free}: Zug der Spule, verschlissenes Rad, verstopfte Düse.</translation>
    </message>
    <message>
        <source>Holds for nozzle {nozzle:g} mm, {temperature:g} °C ± 5 K, up to {rate:g} mm³/s.</source>
        <translation>Gilt für Düse {nozzle:g} mm, {temperature:g} °C ± 5 K, bis {rate:g} mm³/s.</translation>
    </message>
    <message>
        <source>Give this filament no shrink allowance.</source>
        <translation>Diesem Filament keine Schwindzugabe geben.</translation>
    </message>
    <message>
        <source>{because} Parts of one filament that come out too large have not shrunk.</source>
        <translation>{because} Teile eines Filaments, die zu groß ausfallen, sind nicht geschwunden.</translation>
    </message>
    <message>
        <source>{allowance} times as large along {axes}</source>
        <translation>mit Faktor {allowance} längs {axes}</translation>
    </message>
    <message>
        <source>Draw parts of this filament {along}, not on top of an allowance in force.</source>
        <translation>Teile aus diesem Filament {along} zeichnen, nicht zusätzlich zu einer gültigen Zugabe.</translation>
    </message>
    <message>
        <source>along {axis} this filament shrinks {lot} and the machine is {machine} off</source>
        <translation>längs {axis} schwindet dieses Filament um {lot}, und die Maschine weicht um {machine} ab</translation>
    </message>
    <message>
        <source>{told} (prints of this machine: {prints}, of lots: {lots}; machines of this lot: {machines})</source>
        <translation>{told} (Drucke dieser Maschine: {prints}, aus Chargen: {lots}; Maschinen dieser Charge: {machines})</translation>
    </message>
    <message>
        <source>By all trials of the shop, {beside}.</source>
        <translation>Nach allen Versuchen der Werkstatt: {beside}.</translation>
    </message>
    <message>
        <source>The scale error is {value}. By all trials of the shop, {beside}.</source>
        <translation>Der Maßstabsfehler beträgt {value}. Nach allen Versuchen der Werkstatt: {beside}.</translation>
    </message>
    <message>
        <source>{axis} is {value} off on every filament: {prints} prints of {lots} lots tell it from shrinkage.</source>
        <translation>{axis} weicht bei jedem Filament um {value} ab: {prints} Drucke aus {lots} Chargen unterscheiden das von Schwindung.</translation>
    </message>
    <message>
        <source>Count the parts of the {axis} drive again.</source>
        <translation>Die Teile des Antriebs {axis} nachzählen.</translation>
    </message>
    <message>
        <source>Measure the rods from hole to hole: rods and radius set the size of X and Y, not the steps.</source>
        <translation>Die Stangen von Bohrung zu Bohrung messen: Stangen und Radius bestimmen das Maß in X und Y, nicht die Schritte.</translation>
    </message>
    <message>
        <source>Print and measure a piece of another lot on this machine first.</source>
        <translation>Zuerst ein Stück aus einer anderen Charge auf dieser Maschine drucken und messen.</translation>
    </message>
    <message>
        <source>Measure notches or windows too: outside lengths alone cannot carry an axis scale.</source>
        <translation>Auch Lücken oder Fenster messen: Außenlängen allein tragen keinen Achsmaßstab.</translation>
    </message>
    <message>
        <source>Look at tension, seating, run-out and temperature of the {axis} drive; print the piece again after.</source>
        <translation>Spannung, Sitz, Rundlauf und Temperatur des Antriebs {axis} ansehen; danach das Stück erneut drucken.</translation>
    </message>
    <message>
        <source>When tension, seating and run-out are in order: multiply the calculated steps per millimetre of {axis} by {factor}, then print a piece of another lot to check.</source>
        <translation>Wenn Spannung, Sitz und Rundlauf in Ordnung sind: die berechneten Schritte/mm von {axis} mit {factor} multiplizieren, dann zur Prüfung ein Stück aus einer anderen Charge drucken.</translation>
    </message>
    <message>
        <source>Steps per millimetre, shrink allowance, flow factor.</source>
        <translation>Schritte/mm, Schwindzugabe, Durchflussfaktor.</translation>
    </message>
    <message>
        <source>When tension, seating and run-out are in order: multiply the calculated steps per millimetre of both motors by {factor}; crossed belts take one factor, never two.</source>
        <translation>Wenn Spannung, Sitz und Rundlauf in Ordnung sind: die berechneten Schritte/mm beider Motoren mit {factor} multiplizieren; gekreuzte Riemen bekommen einen Faktor, nie zwei.</translation>
    </message>
    <message>
        <source>Read the pillars on both faces: from one side only, reversal may be all of it.</source>
        <translation>Die Säulen an beiden Flächen messen: Von nur einer Seite kann alles davon Umkehrspanne sein.</translation>
    </message>
    <message>
        <source>Read each length more often, or make the piece larger: the interval is too wide to tell.</source>
        <translation>Jede Länge öfter messen oder das Stück größer machen: Der Bereich ist zu breit für eine Aussage.</translation>
    </message>
    <message>
        <source>{second} leans towards +{first}: bring its far end back by {shift} over {span:g} mm. Terms only then.</source>
        <translation>{second} neigt sich nach +{first}: das ferne Ende auf {span:g} mm um {shift} zurückholen. Terme erst danach.</translation>
    </message>
    <message>
        <source>{second} leans towards −{first}: bring its far end forward by {shift} over {span:g} mm. Terms only then.</source>
        <translation>{second} neigt sich nach −{first}: das ferne Ende auf {span:g} mm um {shift} vorholen. Terme erst danach.</translation>
    </message>
    <message>
        <source>A delta has no side to shift: measure rods and tower places, then enter what they are.</source>
        <translation>Ein Delta hat keine Seite zum Verschieben: Stangen und Turmpositionen messen, dann eintragen, was sie sind.</translation>
    </message>
    <message>
        <source>Even the tension of the two belts first, then set the beam: unequal belts lean Y like this.</source>
        <translation>Zuerst die beiden Riemen gleich spannen, dann den Balken ausrichten: Ungleiche Riemen neigen Y genau so.</translation>
    </message>
    <message>
        <source>The +X side of the beam stands ahead: bring it back (towards −Y) by {shift} on {span:g} mm between the sides. Terms only then.</source>
        <translation>Die +X-Seite des Balkens eilt vor: um {shift} zurückholen (nach −Y) bei {span:g} mm zwischen den Seiten. Terme erst danach.</translation>
    </message>
    <message>
        <source>The +X side of the beam lags: bring it forward (towards +Y) by {shift} on {span:g} mm between the sides. Terms only then.</source>
        <translation>Die +X-Seite des Balkens hinkt nach: um {shift} vorholen (nach +Y) bei {span:g} mm zwischen den Seiten. Terme erst danach.</translation>
    </message>
    <message>
        <source>Set the term of {plane} to {new} ± {U}: {old} was in force, {tangent} is added ({formula}). Then make the piece again and expect 0; doubled means that the sign is wrong.</source>
        <translation>Den Term von {plane} auf {new} ± {U} setzen: {old} war in Kraft, {tangent} kommt hinzu ({formula}). Dann das Stück neu machen und 0 erwarten; das Doppelte heißt, dass das Vorzeichen falsch ist.</translation>
    </message>
    <message>
        <source>Look whether the correction is in force at all: the angle is what it was.</source>
        <translation>Ansehen, ob die Korrektur überhaupt in Kraft ist: Der Winkel ist, wie er war.</translation>
    </message>
    <message>
        <source>Shift the same side the other way, by twice as much: the correction doubled the angle.</source>
        <translation>Dieselbe Seite andersherum verschieben, um das Doppelte: Die Korrektur hat den Winkel verdoppelt.</translation>
    </message>
    <message>
        <source>Turn the sign of the term round: the correction doubled the angle.</source>
        <translation>Das Vorzeichen des Terms umdrehen: Die Korrektur hat den Winkel verdoppelt.</translation>
    </message>
    <message>
        <source>Turn the sign of the term round, to {term}: the correction doubled the angle.</source>
        <translation>Das Vorzeichen des Terms umdrehen, auf {term}: Die Korrektur hat den Winkel verdoppelt.</translation>
    </message>
    <message>
        <source>Steps per millimetre, flow, contour offset: none of them turns an axis.</source>
        <translation>Schritte/mm, Durchfluss, Konturversatz: nichts davon dreht eine Achse.</translation>
    </message>
    <message>
        <source>A term is a tangent, below {most:.3f} either way; 0 where none was set.</source>
        <translation>Ein Term ist ein Tangens, dem Betrag nach unter {most:.3f}; 0, wo keiner gesetzt war.</translation>
    </message>
    <message>
        <source>This must be above zero; type a length.</source>
        <translation>Das muss über null liegen; eine Länge eingeben.</translation>
    </message>
    <message>
        <source>Before {before} in 100 mm, now {now}; predicted was 0.</source>
        <translation>Vorher {before} auf 100 mm, jetzt {now}; vorhergesagt war 0.</translation>
    </message>
    <message>
        <source>The correction did what was predicted.</source>
        <translation>Die Korrektur hat bewirkt, was vorhergesagt war.</translation>
    </message>
    <message>
        <source>Off square by {per_100} in 100 mm (readings: {count}); allowed {allowed:.3f} mm in 100 mm.</source>
        <translation>Abweichung vom rechten Winkel {per_100} auf 100 mm (Messwerte: {count}); erlaubt sind {allowed:.3f} mm auf 100 mm.</translation>
    </message>
    <message>
        <source>Leave it</source>
        <translation>Belassen</translation>
    </message>
    <message>
        <source>Mend the mechanics</source>
        <translation>Mechanik instand setzen</translation>
    </message>
    <message>
        <source>A part is not what the list says</source>
        <translation>Ein Teil ist anders als in der Liste</translation>
    </message>
    <message>
        <source>Check the flow</source>
        <translation>Durchfluss prüfen</translation>
    </message>
    <message>
        <source>Contour offset</source>
        <translation>Konturversatz</translation>
    </message>
    <message>
        <source>Shrink allowance</source>
        <translation>Schwindzugabe</translation>
    </message>
    <message>
        <source>Axis scale</source>
        <translation>Achsmaßstab</translation>
    </message>
    <message>
        <source>Extruder steps</source>
        <translation>Extruderschritte</translation>
    </message>
    <message>
        <source>Filament diameter</source>
        <translation>Filamentdurchmesser</translation>
    </message>
    <message>
        <source>The filament itself</source>
        <translation>Das Filament selbst</translation>
    </message>
    <message>
        <source>Flow factor</source>
        <translation>Durchflussfaktor</translation>
    </message>
    <message>
        <source>Printing speed</source>
        <translation>Druckgeschwindigkeit</translation>
    </message>
    <message>
        <source>Squareness terms</source>
        <translation>Rechtwinkligkeitsterme</translation>
    </message>
    <message>
        <source>Levelling screws</source>
        <translation>Stellschrauben des Betts</translation>
    </message>
    <message>
        <source>Height correction</source>
        <translation>Höhenkorrektur</translation>
    </message>
    <message>
        <source>Soak time</source>
        <translation>Durchwärmzeit</translation>
    </message>
    <message>
        <source>Use this instrument</source>
        <translation>Dieses Messmittel verwenden</translation>
    </message>
    <message>
        <source>Take it out of use</source>
        <translation>Aus dem Verkehr ziehen</translation>
    </message>
    <message>
        <source>Nozzle temperature</source>
        <translation>Düsentemperatur</translation>
    </message>
    <message>
        <source>Retraction</source>
        <translation>Rückzug</translation>
    </message>
    <message>
        <source>Pressure lag</source>
        <translation>Druckverzug</translation>
    </message>
    <message>
        <source>Corner speed</source>
        <translation>Eckgeschwindigkeit</translation>
    </message>
    <message>
        <source>Cooling</source>
        <translation>Kühlung</translation>
    </message>
    <message>
        <source>First-layer gap</source>
        <translation>Spalt 1. Schicht</translation>
    </message>
    <message>
        <source>Height offset</source>
        <translation>Höhenversatz</translation>
    </message>
    <message>
        <source>Acceleration</source>
        <translation>Beschleunigung</translation>
    </message>
    <message>
        <source>Motion, flow or cooling</source>
        <translation>Bewegung, Durchfluss oder Kühlung</translation>
    </message>
    <message>
        <source>Geometry or setup</source>
        <translation>Geometrie oder Einrichtung</translation>
    </message>
    <message>
        <source>{count} × {kind}</source>
        <translation>{count} × {kind}</translation>
    </message>
    <message>
        <source>{event} on {day}: count the parts again.</source>
        <translation>{event} am {day}: die Teile nachzählen.</translation>
    </message>
    <message>
        <source>{event} on {day}: compare the settings with those in force; nothing is to be measured.</source>
        <translation>{event} am {day}: die Einstellungen mit den gültigen vergleichen; zu messen ist nichts.</translation>
    </message>
    <message>
        <source>{event} on {day}: do it again.</source>
        <translation>{event} am {day}: wiederholen.</translation>
    </message>
    <message>
        <source>{event} on {day}: look whether the squareness terms are still set.</source>
        <translation>{event} am {day}: ansehen, ob die Rechtwinkligkeitsterme noch gesetzt sind.</translation>
    </message>
    <message>
        <source>{event} on {day}: one quick check, with the bed as warm as before.</source>
        <translation>{event} am {day}: eine Kurzprüfung, mit so warmem Bett wie zuvor.</translation>
    </message>
    <message>
        <source>{event} on {day}: one quick check reading tells.</source>
        <translation>{event} am {day}: Eine Kurzprüfung zeigt es.</translation>
    </message>
    <message>
        <source>Trial {trial} relied on trial {number}, which trial {newer} has replaced since.</source>
        <translation>Versuch {trial} stützte sich auf Versuch {number}, den Versuch {newer} inzwischen ersetzt hat.</translation>
    </message>
    <message>
        <source>Trial {trial} relied on trial {number}, which was withdrawn.</source>
        <translation>Versuch {trial} stützte sich auf Versuch {number}, der zurückgezogen wurde.</translation>
    </message>
    <message>
        <source>Trial {trial} was read with an instrument that was found bad; read one place again with a good one.</source>
        <translation>Versuch {trial} wurde mit einem Messmittel gemessen, das sich als schlecht erwies; eine Stelle mit einem guten erneut messen.</translation>
    </message>
    <message>
        <source>Trial {trial} cannot tell yet: {what}</source>
        <translation>Versuch {trial} kann noch nichts sagen: {what}</translation>
    </message>
    <message>
        <source>The check on {day} found a fault: {note}</source>
        <translation>Die Prüfung am {day} fand einen Mangel: {note}</translation>
    </message>
    <message>
        <source>not described</source>
        <translation>nicht beschrieben</translation>
    </message>
    <message>
        <source>{name} was set anew after it.</source>
        <translation>{name} wurde danach neu gesetzt.</translation>
    </message>
    <message>
        <source>The nozzle temperature was {then:.6g} °C then, and {now:.6g} °C is in force now: a flow factor holds within {near:g} K. Find it again.</source>
        <translation>Die Düsentemperatur war damals {then:.6g} °C, jetzt gültig sind {now:.6g} °C: Ein Durchflussfaktor gilt innerhalb von {near:g} K. Neu bestimmen.</translation>
    </message>
    <message>
        <source>Trial {trial}: the part is not as predicted. Look for the cause, then predict and prove anew.</source>
        <translation>Versuch {trial}: Das Teil ist nicht wie vorhergesagt. Die Ursache suchen, dann neu vorhersagen und nachweisen.</translation>
    </message>
    <message>
        <source>“{step}” was done again after it.</source>
        <translation>„{step}“ wurde danach erneut gemacht.</translation>
    </message>
    <message>
        <source>Not measured yet: {names}.</source>
        <translation>Noch nicht gemessen: {names}.</translation>
    </message>
    <message>
        <source>No drive parts on record for {axes}.</source>
        <translation>Keine Antriebsteile erfasst für {axes}.</translation>
    </message>
    <message>
        <source>{name} {value}: known well enough, stop.</source>
        <translation>{name} {value}: gut genug bekannt, aufhören.</translation>
    </message>
    <message>
        <source>{name} {value}: to be known to {limit} (standard uncertainty); read more.</source>
        <translation>{name} {value}: auf {limit} zu bestimmen (Standardunsicherheit); weiter messen.</translation>
    </message>
    <message>
        <source>{name} {value}: within {limit}, stop.</source>
        <translation>{name} {value}: innerhalb {limit}, aufhören.</translation>
    </message>
    <message>
        <source>{name} {value}: beyond {limit}; mend it before you go on.</source>
        <translation>{name} {value}: jenseits {limit}; erst beheben, dann weiter.</translation>
    </message>
    <message>
        <source>{name} {value}: not told against {limit}; more readings tell.</source>
        <translation>{name} {value}: gegen {limit} nicht entschieden; mehr Messwerte zeigen es.</translation>
    </message>
    <message>
        <source>{kind}</source>
        <translation>{kind}</translation>
    </message>
    <message>
        <source>Machine record</source>
        <translation>Maschinendaten</translation>
    </message>
    <message>
        <source>Count and write down the parts of each drive, with the motors and their microsteps.</source>
        <translation>Die Teile jedes Antriebs zählen und aufschreiben, mit Motoren und Mikroschritten.</translation>
    </message>
    <message>
        <source>Steps per millimetre follow from the parts; a wrong count makes every later number wrong.</source>
        <translation>Die Schritte/mm folgen aus den Teilen; falsch gezählt, wird jede spätere Zahl falsch.</translation>
    </message>
    <message>
        <source>Nothing on a moving axis is only assumed.</source>
        <translation>An einer bewegten Achse ist nichts nur angenommen.</translation>
    </message>
    <message>
        <source>Mechanical health</source>
        <translation>Zustand der Mechanik</translation>
    </message>
    <message>
        <source>Look at screws, belts, slides, fans and wiring, with the machine switched off and unplugged.</source>
        <translation>Schrauben, Riemen, Führungen, Lüfter und Verdrahtung ansehen, Maschine ausgeschaltet und Netzstecker gezogen.</translation>
    </message>
    <message>
        <source>A loose part moves differently each time; no setting cures that.</source>
        <translation>Ein loses Teil bewegt sich jedes Mal anders; das heilt keine Einstellung.</translation>
    </message>
    <message>
        <source>No click, no rock; both belts within 5 % in tone.</source>
        <translation>Kein Knacken, kein Wackeln; beide Riemen im Ton innerhalb 5 %.</translation>
    </message>
    <message>
        <source>Steps per millimetre, calculated</source>
        <translation>Schritte/mm, berechnet</translation>
    </message>
    <message>
        <source>Take the calculated values over, then command 100 mm and read the travel on a rule.</source>
        <translation>Die berechneten Werte übernehmen, dann 100 mm verfahren lassen und den Weg am Stahllineal ablesen.</translation>
    </message>
    <message>
        <source>The rule finds wrong factors only; it is too coarse to tune anything by.</source>
        <translation>Das Lineal findet nur falsche Faktoren; zum Abgleichen ist es zu grob.</translation>
    </message>
    <message>
        <source>Commanded 100 mm reads 100 ± 0.5 mm.</source>
        <translation>Aus befohlenen 100 mm werden 100 ± 0,5 mm.</translation>
    </message>
    <message>
        <source>Check caliper, indicator and balance against something known, and your own hand by repeats.</source>
        <translation>Messschieber, Messuhr und Waage an Bekanntem prüfen, die eigene Hand durch Wiederholungen.</translation>
    </message>
    <message>
        <source>Zero returns within ± 0.01 mm, the known piece within the limit of error.</source>
        <translation>Der Nullpunkt kehrt auf ± 0,01 mm zurück, das bekannte Stück liegt innerhalb der Fehlergrenze.</translation>
    </message>
    <message>
        <source>Reversal error</source>
        <translation>Umkehrspanne</translation>
    </message>
    <message>
        <source>Approach the same place from both sides under an indicator, on X and on Y.</source>
        <translation>Dieselbe Stelle unter der Messuhr von beiden Seiten anfahren, auf X und auf Y.</translation>
    </message>
    <message>
        <source>Lost motion looks like an error of size; found first, it is not booked to the filament.</source>
        <translation>Toter Gang sieht wie eine Maßabweichung aus; zuerst gefunden, wird er nicht dem Filament zugerechnet.</translation>
    </message>
    <message>
        <source>Up to 0.02 mm is good, up to 0.05 mm will do; above that mend it, do not compensate.</source>
        <translation>Bis 0,02 mm ist gut, bis 0,05 mm genügt; darüber instand setzen, nicht kompensieren.</translation>
    </message>
    <message>
        <source>Squareness and bed plane</source>
        <translation>Rechtwinkligkeit und Bettebene</translation>
    </message>
    <message>
        <source>Measure the angle between X and Y, then the bed while it is as hot as in use.</source>
        <translation>Den Winkel zwischen X und Y messen, dann das Bett, so heiß wie im Gebrauch.</translation>
    </message>
    <message>
        <source>A leaning axis changes diagonals, a tilted bed the first layer; both spoil the size piece.</source>
        <translation>Eine schiefe Achse ändert Diagonalen, ein schräges Bett die erste Schicht; beides verdirbt das Maßstück.</translation>
    </message>
    <message>
        <source>Tilt below a quarter of the first layer across the bed, the rest below half of it.</source>
        <translation>Neigung über das Bett unter einem Viertel der ersten Schicht, der Rest unter der Hälfte.</translation>
    </message>
    <message>
        <source>Extruder feed</source>
        <translation>Extrudervorschub</translation>
    </message>
    <message>
        <source>Feed a marked length slowly and unloaded; repeat.</source>
        <translation>Eine markierte Länge langsam und ohne Last fördern; wiederholen.</translation>
    </message>
    <message>
        <source>The flow factor is only worth something when the filament commanded is the filament fed.</source>
        <translation>Der Durchflussfaktor ist nur etwas wert, wenn so viel Filament gefördert wird wie befohlen.</translation>
    </message>
    <message>
        <source>Twice running 100 mm come within ± 0.5 mm.</source>
        <translation>Zweimal hintereinander kommen 100 mm auf ± 0,5 mm an.</translation>
    </message>
    <message>
        <source>Filament lot</source>
        <translation>Filamentcharge</translation>
    </message>
    <message>
        <source>Dry it, measure its diameter in pairs along some metres, and weigh cut metres: the flow trials need the mass per length.</source>
        <translation>Trocknen, den Durchmesser paarweise über einige Meter messen und geschnittene Meter wägen: Die Durchflussversuche brauchen die Masse je Länge.</translation>
    </message>
    <message>
        <source>Diameter enters by its square; another spool is another filament.</source>
        <translation>Der Durchmesser geht quadratisch ein; eine andere Spule ist ein anderes Filament.</translation>
    </message>
    <message>
        <source>Equivalent diameter known to ± 0.5 %, ovality 0.05 mm or less.</source>
        <translation>Äquivalenter Durchmesser auf ± 0,5 % bekannt, Ovalität höchstens 0,05 mm.</translation>
    </message>
    <message>
        <source>Temperature ladder</source>
        <translation>Temperaturleiter</translation>
    </message>
    <message>
        <source>Print the steps of a coarse ladder and find the plateau.</source>
        <translation>Die Stufen einer groben Leiter drucken und das Plateau finden.</translation>
    </message>
    <message>
        <source>Flow and sizes are measured at one temperature; it is chosen before them.</source>
        <translation>Durchfluss und Maße werden bei einer Temperatur gemessen; sie wird vorher gewählt.</translation>
    </message>
    <message>
        <source>A plateau of 10 K or more; take its middle.</source>
        <translation>Ein Plateau von mindestens 10 K; seine Mitte nehmen.</translation>
    </message>
    <message>
        <source>Flow ceiling</source>
        <translation>Durchflussgrenze</translation>
    </message>
    <message>
        <source>Raise the volumetric rate until delivery falls behind, and stay with the machine.</source>
        <translation>Den Volumenstrom erhöhen, bis die Förderung zurückbleibt; bei der Maschine bleiben.</translation>
    </message>
    <message>
        <source>Above the ceiling walls get thin, and nobody knows why.</source>
        <translation>Über der Grenze werden Wände dünn, und niemand weiß, warum.</translation>
    </message>
    <message>
        <source>The wanted speed is covered by 80 % of the ceiling.</source>
        <translation>80 % der Grenze decken die gewünschte Geschwindigkeit ab.</translation>
    </message>
    <message>
        <source>Weigh a box, measure a wall, score the top pads.</source>
        <translation>Einen Kasten wägen, eine Wand messen, die Deckfelder bewerten.</translation>
    </message>
    <message>
        <source>A bead that is too wide makes all parts fat; a size correction would hide it.</source>
        <translation>Eine zu breite Raupe macht alle Teile dick; eine Maßkorrektur würde das verdecken.</translation>
    </message>
    <message>
        <source>The estimates agree within their U; a change below 1.5 % is left alone.</source>
        <translation>Die Schätzwerte stimmen innerhalb ihrer U überein; Änderungen unter 1,5 % unterbleiben.</translation>
    </message>
    <message>
        <source>Pressure lag, then retraction</source>
        <translation>Druckverzug, dann Rückzug</translation>
    </message>
    <message>
        <source>Corners bulge with the wrong lag, and the size piece is read at corners too.</source>
        <translation>Mit falschem Verzug wölben sich Ecken, und das Maßstück wird auch an Ecken gemessen.</translation>
    </message>
    <message>
        <source>Instruments</source>
        <translation>Messmittel</translation>
    </message>
    <message>
        <source>Whatever is read with a bad instrument is in doubt until it is read again.</source>
        <translation>Was mit einem schlechten Messmittel gemessen wurde, ist zweifelhaft, bis es erneut gemessen ist.</translation>
    </message>
    <message>
        <source>Find the lag, then the least retraction that reaches the highest score.</source>
        <translation>Den Verzug finden, dann den geringsten Rückzug, der die höchste Punktzahl erreicht.</translation>
    </message>
    <message>
        <source>The highest score with the least retraction.</source>
        <translation>Die höchste Punktzahl mit dem geringsten Rückzug.</translation>
    </message>
    <message>
        <source>Speed and acceleration</source>
        <translation>Geschw. und Beschleunigung</translation>
    </message>
    <message>
        <source>Score pieces printed at several speeds, and measure the ringing.</source>
        <translation>Bei mehreren Geschwindigkeiten gedruckte Stücke bewerten und das Nachschwingen messen.</translation>
    </message>
    <message>
        <source>Sizes are measured at the speed that is going to be used.</source>
        <translation>Maße werden bei der Geschwindigkeit gemessen, die dann auch gefahren wird.</translation>
    </message>
    <message>
        <source>The knee: beyond it less than 5 % of time is saved for one step of score.</source>
        <translation>Der Knick: jenseits davon spart eine Bewertungsstufe weniger als 5 % der Zeit.</translation>
    </message>
    <message>
        <source>Size piece</source>
        <translation>Maßstück</translation>
    </message>
    <message>
        <source>Print combs for X and Y from one lot on one day, and read them.</source>
        <translation>Kämme für X und Y aus einer Charge an einem Tag drucken und messen.</translation>
    </message>
    <message>
        <source>Only now is what remains an error of scale, of wall outset or of shrinkage.</source>
        <translation>Erst jetzt ist der Rest ein Fehler von Maßstab, Wandüberstand oder Schwindung.</translation>
    </message>
    <message>
        <source>Scale error known to 0.03 %, wall outset to 0.01 mm (standard uncertainties).</source>
        <translation>Maßstabsfehler auf 0,03 % bekannt, Wandüberstand auf 0,01 mm (Standardunsicherheiten).</translation>
    </message>
    <message>
        <source>Decide what to change</source>
        <translation>Entscheiden, was zu ändern ist</translation>
    </message>
    <message>
        <source>Read the verdict of the size piece. Put one change in force in the Logbook, under Put in force, or write down here that nothing is changed.</source>
        <translation>Das Urteil über das Maßstück lesen. Eine Änderung im Logbuch unter „In Kraft setzen“ in Kraft setzen oder hier festhalten, dass nichts geändert wird.</translation>
    </message>
    <message>
        <source>Every error has one owner; booked to another one, the next part gets worse.</source>
        <translation>Jeder Fehler hat einen Urheber; einem anderen zugerechnet, wird das nächste Teil schlechter.</translation>
    </message>
    <message>
        <source>Each corrected term is beyond its U and above a tenth of the tolerance.</source>
        <translation>Jede korrigierte Größe liegt jenseits ihrer U und über einem Zehntel der Toleranz.</translation>
    </message>
    <message>
        <source>Proof part</source>
        <translation>Nachweisteil</translation>
    </message>
    <message>
        <source>Lock the prediction, print a part that was not used for tuning and read it on Size error; then hold both together on Prediction, and keep that.</source>
        <translation>Die Vorhersage festschreiben, ein nicht zum Einstellen benutztes Teil drucken und auf Maßabweichung messen; dann beides auf Vorhersage gegeneinanderhalten und das behalten.</translation>
    </message>
    <message>
        <source>A machine that was tuned on a piece proves nothing on that piece.</source>
        <translation>Eine Maschine, die an einem Stück eingestellt wurde, beweist an diesem Stück nichts.</translation>
    </message>
    <message>
        <source>All readings within their predicted intervals, no class of features to one side.</source>
        <translation>Alle Messwerte in ihrem vorhergesagten Bereich, keine Merkmalsklasse einseitig.</translation>
    </message>
    <message>
        <source>Capability and promise</source>
        <translation>Fähigkeit und Zusage</translation>
    </message>
    <message>
        <source>From 10 parts or more, work out the tolerance that can be promised.</source>
        <translation>Aus mindestens 10 Teilen die Toleranz bestimmen, die zugesagt werden kann.</translation>
    </message>
    <message>
        <source>A spread needs parts; fewer show one but promise nothing.</source>
        <translation>Streuung braucht Teile; weniger zeigen eine, sagen aber nichts zu.</translation>
    </message>
    <message>
        <source>The promise covers deviation and spread at the stated confidence.</source>
        <translation>Die Zusage deckt Abweichung und Streuung mit dem genannten Vertrauen ab.</translation>
    </message>
    <message>
        <source>Watching</source>
        <translation>Überwachung</translation>
    </message>
    <message>
        <source>Print one check piece a week and look at the charts.</source>
        <translation>Wöchentlich ein Prüfstück drucken und die Regelkarten ansehen.</translation>
    </message>
    <message>
        <source>Belts and nozzles wear slowly; a chart sees it before a customer does.</source>
        <translation>Riemen und Düsen verschleißen langsam; eine Regelkarte sieht es vor dem Kunden.</translation>
    </message>
    <message>
        <source>In control: wait longer. Out of control: check twice as often.</source>
        <translation>Beherrscht: länger warten. Nicht beherrscht: doppelt so oft prüfen.</translation>
    </message>
    <message>
        <source>Yearly upkeep</source>
        <translation>Jahreswartung</translation>
    </message>
    <message>
        <source>Go through the list with the machine switched off and unplugged, then prove it again.</source>
        <translation>Die Liste bei ausgeschalteter Maschine und gezogenem Netzstecker durchgehen, dann neu nachweisen.</translation>
    </message>
    <message>
        <source>What nobody looks at for a year is what fails.</source>
        <translation>Was ein Jahr lang niemand ansieht, fällt aus.</translation>
    </message>
    <message>
        <source>A new proof part passes.</source>
        <translation>Ein neues Nachweisteil besteht.</translation>
    </message>
    <message>
        <source>Crossed belts: both belts move both axes; tension them alike. Unequal belts lean the axes, they do not change X against Y.</source>
        <translation>Gekreuzte Riemen: Beide Riemen bewegen beide Achsen; gleich spannen. Ungleiche Riemen neigen die Achsen, sie ändern X nicht gegen Y.</translation>
    </message>
    <message>
        <source>Crossed belts: X and Y share one value, for both motors move both axes.</source>
        <translation>Gekreuzte Riemen: X und Y haben einen gemeinsamen Wert, denn beide Motoren bewegen beide Achsen.</translation>
    </message>
    <message>
        <source>Three carriages: all three have one value; rod length and radius set the size.</source>
        <translation>Drei Schlitten: Alle drei haben einen Wert; Stangenlänge und Radius bestimmen das Maß.</translation>
    </message>
    <message>
        <source>Three carriages: there is no pair of axes to square; the bed plane is what is left.</source>
        <translation>Drei Schlitten: Es gibt kein Achsenpaar zum Ausrichten; übrig ist die Bettebene.</translation>
    </message>
    <message>
        <source>parts list</source>
        <translation>Teileliste</translation>
    </message>
    <message>
        <source>mechanics</source>
        <translation>Mechanik</translation>
    </message>
    <message>
        <source>gauges</source>
        <translation>Messmittel</translation>
    </message>
    <message>
        <source>reversal error</source>
        <translation>Umkehrspanne</translation>
    </message>
    <message>
        <source>squareness</source>
        <translation>Rechtwinkligkeit</translation>
    </message>
    <message>
        <source>bed plane</source>
        <translation>Bettebene</translation>
    </message>
    <message>
        <source>extruder feed</source>
        <translation>Extrudervorschub</translation>
    </message>
    <message>
        <source>diameter of the lot</source>
        <translation>Durchmesser der Charge</translation>
    </message>
    <message>
        <source>temperature</source>
        <translation>Temperatur</translation>
    </message>
    <message>
        <source>lag and retraction</source>
        <translation>Verzug und Rückzug</translation>
    </message>
    <message>
        <source>speed</source>
        <translation>Geschwindigkeit</translation>
    </message>
    <message>
        <source>wall outset</source>
        <translation>Wandüberstand</translation>
    </message>
    <message>
        <source>scale of the machine</source>
        <translation>Maßstab der Maschine</translation>
    </message>
    <message>
        <source>shrinkage</source>
        <translation>Schwindung</translation>
    </message>
    <message>
        <source>decision</source>
        <translation>Entscheidung</translation>
    </message>
    <message>
        <source>proof</source>
        <translation>Nachweis</translation>
    </message>
    <message>
        <source>promise</source>
        <translation>Zusage</translation>
    </message>
    <message>
        <source>watching</source>
        <translation>Überwachung</translation>
    </message>
    <message>
        <source>yearly upkeep</source>
        <translation>Jahreswartung</translation>
    </message>
    <message>
        <source>Belt tensioned again</source>
        <translation>Riemen nachgespannt</translation>
    </message>
    <message>
        <source>New belt or pulley</source>
        <translation>Neuer Riemen oder neue Riemenscheibe</translation>
    </message>
    <message>
        <source>New screw, rack or gear</source>
        <translation>Neue Spindel, Zahnstange oder neues Zahnrad</translation>
    </message>
    <message>
        <source>New nozzle, same bore</source>
        <translation>Neue Düse, gleiche Bohrung</translation>
    </message>
    <message>
        <source>New nozzle, other bore</source>
        <translation>Neue Düse, andere Bohrung</translation>
    </message>
    <message>
        <source>New feed gear or wheel</source>
        <translation>Neues Förderrad</translation>
    </message>
    <message>
        <source>New heater or heat sensor</source>
        <translation>Neue Heizung oder neuer Temperaturfühler</translation>
    </message>
    <message>
        <source>New spool, same product and colour</source>
        <translation>Neue Spule, gleiches Produkt, gleiche Farbe</translation>
    </message>
    <message>
        <source>New colour or lot</source>
        <translation>Neue Farbe oder Charge</translation>
    </message>
    <message>
        <source>New polymer</source>
        <translation>Neuer Kunststoff</translation>
    </message>
    <message>
        <source>Controller program or settings loaded anew</source>
        <translation>Steuerungsprogramm oder Einstellungen neu geladen</translation>
    </message>
    <message>
        <source>Machine moved</source>
        <translation>Maschine umgestellt</translation>
    </message>
    <message>
        <source>Room 8 K warmer or colder, enclosure, draught</source>
        <translation>Raum 8 K wärmer oder kälter, Einhausung, Zugluft</translation>
    </message>
    <message>
        <source>Crash, shifted layer or lost steps</source>
        <translation>Kollision, versetzte Schicht oder Schrittverlust</translation>
    </message>
    <message>
        <source>Other bed sheet or surface</source>
        <translation>Andere Bettauflage oder Oberfläche</translation>
    </message>
    <message>
        <source>Other slicing program or bead model</source>
        <translation>Andere Druckaufbereitung oder anderes Raupenmodell</translation>
    </message>
    <message>
        <source>Instrument found bad</source>
        <translation>Messmittel schlecht befunden</translation>
    </message>
    <message>
        <source>Checked by hand</source>
        <translation>Von Hand geprüft</translation>
    </message>
    <message>
        <source>Step skipped</source>
        <translation>Schritt übersprungen</translation>
    </message>
    <message>
        <source>Trial withdrawn</source>
        <translation>Versuch zurückgezogen</translation>
    </message>
    <message>
        <source>Frame screws are tight</source>
        <translation>Gestellschrauben sind fest</translation>
    </message>
    <message>
        <source>Each pulley&apos;s grub screw sits on the flat of its shaft</source>
        <translation>Gewindestifte der Riemenscheiben auf der Abflachung</translation>
    </message>
    <message>
        <source>Belts are tight, both with the same tone</source>
        <translation>Riemen sind gespannt, beide mit gleichem Ton</translation>
    </message>
    <message>
        <source>Slides and wheels run without play</source>
        <translation>Führungen und Räder laufen ohne Spiel</translation>
    </message>
    <message>
        <source>Lead screws are clean and greased</source>
        <translation>Spindeln sind sauber und gefettet</translation>
    </message>
    <message>
        <source>Fans run and are clean</source>
        <translation>Lüfter laufen und sind sauber</translation>
    </message>
    <message>
        <source>Wiring and terminals show no chafing and no browning</source>
        <translation>Kabel und Klemmen nicht gescheuert, nicht verfärbt</translation>
    </message>
    <message>
        <source>Each axis moves the way it is told</source>
        <translation>Jede Achse fährt in die befohlene Richtung</translation>
    </message>
    <message>
        <source>The ends of travel are where the record says</source>
        <translation>Verfahrenden liegen, wo die Maschinendaten sie angeben</translation>
    </message>
    <message>
        <source>Commanded 100 mm reads 100 ± 0.5 mm on a rule</source>
        <translation>Aus befohlenen 100 mm werden am Lineal 100 ± 0,5 mm</translation>
    </message>
    <message>
        <source>Belts: no frayed edge, tone as on record</source>
        <translation>Riemen: keine ausgefranste Kante, Ton wie erfasst</translation>
    </message>
    <message>
        <source>Slides and screws cleaned and greased</source>
        <translation>Führungen und Spindeln gereinigt und gefettet</translation>
    </message>
    <message>
        <source>Nozzle measured or changed</source>
        <translation>Düse gemessen oder gewechselt</translation>
    </message>
    <message>
        <source>Heat sensors agree with a thermometer</source>
        <translation>Temperaturfühler stimmen mit einem Thermometer überein</translation>
    </message>
    <message>
        <source>Instruments checked</source>
        <translation>Messmittel geprüft</translation>
    </message>
    <message>
        <source>Proof part printed and read</source>
        <translation>Nachweisteil gedruckt und gemessen</translation>
    </message>
    <message>
        <source>A copy of the database lies elsewhere</source>
        <translation>Eine Kopie der Datenbank liegt an anderem Ort</translation>
    </message>
    <message>
        <source>Filament does not wear an instrument; choose another chart.</source>
        <translation>Filament nutzt kein Messmittel ab; eine andere Regelkarte wählen.</translation>
    </message>
    <message>
        <source>{lot} was printed on more than one machine, so its weighings do not tell what went through this nozzle. Keep a spool to one machine while its wear is followed.</source>
        <translation>{lot} wurde auf mehr als einer Maschine gedruckt, die Wägungen sagen also nicht, was durch diese Düse ging. Eine Spule auf einer Maschine lassen, solange deren Verschleiß verfolgt wird.</translation>
    </message>
    <message>
        <source>{lot} weighed {before:.0f} g of filament, and {after:.0f} g later: another spool? Make it a lot of its own on page Lots, or withdraw the wrong weighing.</source>
        <translation>{lot} wog {before:.0f} g Filament und später {after:.0f} g: eine andere Spule? Auf der Seite Chargen eine eigene Charge daraus machen oder die falsche Wägung zurückziehen.</translation>
    </message>
    <message>
        <source>These results have no lot. Choose the lot before a trial is kept, and weigh its spool.</source>
        <translation>Diese Ergebnisse haben keine Charge. Die Charge wählen, bevor ein Versuch behalten wird, und ihre Spule wägen.</translation>
    </message>
    <message>
        <source>Only {told} of {count} results lie between two weighings of their spool, {least} are the least. Weigh the spool of {lots} on page Lots, before the first print and after the last.</source>
        <translation>Nur {told} von {count} Ergebnissen liegen zwischen zwei Wägungen ihrer Spule, nötig sind mindestens {least}. Auf der Seite Chargen die Spule von {lots} wägen, vor dem ersten und nach dem letzten Druck.</translation>
    </message>
    <message>
        <source>Too little filament was used between these results. Go on, and weigh the spool again.</source>
        <translation>Zwischen diesen Ergebnissen wurde zu wenig Filament verbraucht. Weitermachen und die Spule erneut wägen.</translation>
    </message>
    <message>
        <source>It changes with the filament used: look at the nozzle for wear, filled filament above all.</source>
        <translation>Es ändert sich mit dem verbrauchten Filament: Düse auf Verschleiß ansehen, vor allem bei gefülltem Filament.</translation>
    </message>
    <message>
        <source>No change with the filament used is proved.</source>
        <translation>Keine Änderung mit dem verbrauchten Filament ist nachgewiesen.</translation>
    </message>
    <message>
        <source>everything booked to the steps</source>
        <translation>alles den Schritten zugerechnet</translation>
    </message>
    <message>
        <source>steps corrected from {length:g} mm</source>
        <translation>Schritte nach {length:g} mm korrigiert</translation>
    </message>
    <message>
        <source>shrinkage and axis scale</source>
        <translation>Schwindung und Achsmaßstab</translation>
    </message>
    <message>
        <source>machine&apos;s share</source>
        <translation>Anteil der Maschine</translation>
    </message>
    <message>
        <source>lost motion</source>
        <translation>toter Gang</translation>
    </message>
    <message>
        <source>origin</source>
        <translation>Ursprung</translation>
    </message>
    <message>
        <source>round bosses</source>
        <translation>Außenzylinder</translation>
    </message>
    <message>
        <source>round bores, facets</source>
        <translation>Bohrungen, Facetten</translation>
    </message>
    <message>
        <source>first-layer flare</source>
        <translation>Fußwulst der ersten Schicht</translation>
    </message>
    <message>
        <source>not told apart</source>
        <translation>nicht zu trennen</translation>
    </message>
    <message>
        <source>unexplained</source>
        <translation>ungeklärt</translation>
    </message>
    <message>
        <source>Places probed so far: {n}; a plane takes three, and a fourth to show a misfit.</source>
        <translation>Bisher angetastete Stellen: {n}; eine Ebene braucht drei, und eine vierte, um Unpassendes zu zeigen.</translation>
    </message>
    <message>
        <source>All places lie in one line; probe at places beside it too.</source>
        <translation>Alle Stellen liegen auf einer Linie; auch daneben antasten.</translation>
    </message>
    <message>
        <source>No place was touched again: touch one ten times, or the bed&apos;s shape counts as scatter of the probe.</source>
        <translation>Keine Stelle wurde erneut angetastet: eine zehnmal antasten, sonst zählt die Form des Betts als Streuung des Tasters.</translation>
    </message>
    <message>
        <source>{count} places a side cannot be planned; type 2 to {most}.</source>
        <translation>{count} Stellen je Seite lassen sich nicht planen; 2 bis {most} eintippen.</translation>
    </message>
    <message>
        <source>Places and heights differ in number, or there are none; check the columns.</source>
        <translation>Zahl der Stellen und der Höhen ist ungleich, oder es gibt keine; die Spalten prüfen.</translation>
    </message>
    <message>
        <source>Row {row}: this is not a finite number; retype it.</source>
        <translation>Zeile {row}: keine endliche Zahl; neu eingeben.</translation>
    </message>
    <message>
        <source>The probe scatters by {sd:.3f} mm at one and the same place, more than {limit} mm: clean the nozzle or tip, tighten the probe, then touch again.</source>
        <translation>Der Taster streut an derselben Stelle um {sd:.3f} mm, mehr als {limit} mm: Düse oder Spitze reinigen, Taster festziehen, dann erneut antasten.</translation>
    </message>
    <message>
        <source>Probe {number} is {off:.2f} mm from the plane of the others: swarf, a clip, or beside the plate? Probe there again, or leave it out with that reason.</source>
        <translation>Antastung {number} liegt {off:.2f} mm neben der Ebene der anderen: Span, Klammer oder neben der Platte? Dort erneut antasten oder mit diesem Grund weglassen.</translation>
    </message>
    <message>
        <source>Probed cold: plates move by 0.05 to 0.3 mm when hot. Kept apart from hot readings.</source>
        <translation>Kalt angetastet: Platten bewegen sich beim Heizen um 0,05 bis 0,3 mm. Getrennt von heißen Messwerten behalten.</translation>
    </message>
    <message>
        <source>The bed was at {bed:g} °C and is printed on at {printed:g} °C; plates move by 0.05 to 0.3 mm when hot. Kept as cold.</source>
        <translation>Das Bett hatte {bed:g} °C, gedruckt wird bei {printed:g} °C; Platten bewegen sich beim Heizen um 0,05 bis 0,3 mm. Als kalt behalten.</translation>
    </message>
    <message>
        <source>The thread pitch must be above zero; M3 has 0.5, M4 0.7, M5 0.8 mm.</source>
        <translation>Die Gewindesteigung muss über null liegen; M3 hat 0,5, M4 0,7, M5 0,8 mm.</translation>
    </message>
    <message>
        <source>{n} screws are named; a bed is levelled on three or four.</source>
        <translation>{n} Schrauben sind genannt; ein Bett wird an drei oder vier eingestellt.</translation>
    </message>
    <message>
        <source>The screws stand in one line or on one place; type where each one is.</source>
        <translation>Die Schrauben stehen auf einer Linie oder an einer Stelle; eingeben, wo jede steht.</translation>
    </message>
    <message>
        <source>Row {row}: time counts from the start of heating, from 0 on.</source>
        <translation>Zeile {row}: Die Zeit zählt ab Heizbeginn, von 0 an.</translation>
    </message>
    <message>
        <source>Readings over time so far: {n}; a drift takes {fewest} at different times. Read on, every two minutes.</source>
        <translation>Messwerte über der Zeit bisher: {n}; eine Drift braucht {fewest} zu verschiedenen Zeiten. Weiter ablesen, alle zwei Minuten.</translation>
    </message>
    <message>
        <source>Span and mass of a belt are above zero; type them again.</source>
        <translation>Länge des freien Trums und Masse eines Riemens liegen über null; erneut eingeben.</translation>
    </message>
    <message>
        <source>{tone} Hz is no tone of a belt, which lies between {lowest} and {highest} Hz; listen again.</source>
        <translation>{tone} Hz ist kein Ton eines Riemens, der liegt zwischen {lowest} und {highest} Hz; erneut hören.</translation>
    </message>
    <message>
        <source>A delta has rods and a radius above 0 mm; measure and type them.</source>
        <translation>Ein Delta hat Stangen und einen Radius über 0 mm; messen und eingeben.</translation>
    </message>
    <message>
        <source>The radius {radius:g} mm is not below the rod length {rod:g} mm; are they exchanged?</source>
        <translation>Der Radius {radius:g} mm ist nicht kleiner als die Stangenlänge {rod:g} mm; sind sie vertauscht?</translation>
    </message>
    <message>
        <source>{measured:g} mm is {off:.1f} mm off the rod as entered; was it measured from hole to hole?</source>
        <translation>{measured:g} mm weichen um {off:.1f} mm von der eingetragenen Stange ab; wurde von Bohrung zu Bohrung gemessen?</translation>
    </message>
    <message>
        <source>Nothing was read twice: {sd:g} mm is assumed for one reading. Read each twice.</source>
        <translation>Nichts wurde zweimal gemessen: Für einen Messwert werden {sd:g} mm angenommen. Jede Länge zweimal messen.</translation>
    </message>
    <message>
        <source>A plane has two axes; pick one.</source>
        <translation>Eine Ebene hat zwei Achsen; eine auswählen.</translation>
    </message>
    <message>
        <source>The side along {axis} must be above zero; type the distance.</source>
        <translation>Die Seite längs {axis} muss über null liegen; den Abstand eingeben.</translation>
    </message>
    <message>
        <source>This is neither diagonal 1 nor 2; leave the reading out.</source>
        <translation>Das ist weder Diagonale 1 noch 2; den Messwert auslassen.</translation>
    </message>
    <message>
        <source>Whether this was read outside, inside or drawn is not told; leave the reading out.</source>
        <translation>Ob außen, innen oder gezeichnet gemessen wurde, ist nicht gesagt; den Messwert auslassen.</translation>
    </message>
    <message>
        <source>Row {row}: a diagonal is above zero; retype it.</source>
        <translation>Zeile {row}: Eine Diagonale liegt über null; neu eingeben.</translation>
    </message>
    <message>
        <source>A diagonal of {d:g} mm cannot be where the sides make {across:.1f} mm; retype it.</source>
        <translation>Eine Diagonale von {d:g} mm kann nicht sein, wo die Seiten {across:.1f} mm ergeben; neu eingeben.</translation>
    </message>
    <message>
        <source>Diagonal {number} is not read yet; one alone tells no angle.</source>
        <translation>Diagonale {number} ist noch nicht gemessen; eine allein ergibt keinen Winkel.</translation>
    </message>
    <message>
        <source>One diagonal is read outside, the other inside; read both the same way.</source>
        <translation>Eine Diagonale ist außen, die andere innen gemessen; beide gleich messen.</translation>
    </message>
    <message>
        <source>Diagonal {number} comes to {d:.2f} mm, but sides of {a:g} and {b:g} mm make {across:.2f} mm. Check the sides, and that pillars were read on their outer and inner faces.</source>
        <translation>Diagonale {number} kommt auf {d:.2f} mm, Seiten von {a:g} und {b:g} mm ergeben aber {across:.2f} mm. Die Seiten prüfen, und ob die Säulen an Außen- und Innenflächen gemessen wurden.</translation>
    </message>
    <message>
        <source>Readings of the same length lie {apart:.2f} mm apart; read that one again, or leave out the wrong one.</source>
        <translation>Messwerte derselben Länge liegen {apart:.2f} mm auseinander; erneut messen oder den falschen weglassen.</translation>
    </message>
    <message>
        <source>The pillars measure {wide:.2f} mm along diagonal 1, {other:.2f} mm along diagonal 2: unequal reversal, or one misread. Reversal drops out here; outer readings alone would have faked {fake:.2f} mm.</source>
        <translation>Die Säulen messen {wide:.2f} mm längs Diagonale 1, {other:.2f} mm längs Diagonale 2: ungleiche Umkehrspanne oder eine falsch gelesen. Die Umkehrspanne fällt hier heraus; Außenmaße allein hätten {fake:.2f} mm vorgetäuscht.</translation>
    </message>
    <message>
        <source>A rotary axis has steps per degree and is never compared with a length. Command 360° and look whether a mark comes back to its place.</source>
        <translation>Eine Drehachse hat Schritte je Grad und wird nie mit einer Länge verglichen. 360° befehlen und ansehen, ob eine Marke an ihre Stelle zurückkommt.</translation>
    </message>
    <message>
        <source>{motor} ÷ ({pitch} mm × {teeth} teeth{reeving}) = {steps} steps/mm</source>
        <translation>{motor} ÷ ({pitch} mm × {teeth} Zähne{reeving}) = {steps} Schritte/mm</translation>
    </message>
    <message>
        <source>{motor} ÷ ({pitch} mm pitch × {starts} starts{reeving}) = {steps} steps/mm</source>
        <translation>{motor} ÷ ({pitch} mm Teilung × {starts} Gänge{reeving}) = {steps} Schritte/mm</translation>
    </message>
    <message>
        <source>{motor} ÷ (π × {diameter} mm{reeving}) = {steps} steps/mm</source>
        <translation>{motor} ÷ (π × {diameter} mm{reeving}) = {steps} Schritte/mm</translation>
    </message>
    <message>
        <source>{motor} ÷ ({pitch} mm × {teeth} teeth{slant}{reeving}) = {steps} steps/mm</source>
        <translation>{motor} ÷ ({pitch} mm × {teeth} Zähne{slant}{reeving}) = {steps} Schritte/mm</translation>
    </message>
    <message>
        <source>{motor} ÷ (π × module {module} mm × {teeth} teeth{slant}{reeving}) = {steps} steps/mm</source>
        <translation>{motor} ÷ (π × Modul {module} mm × {teeth} Zähne{slant}{reeving}) = {steps} Schritte/mm</translation>
    </message>
    <message>
        <source>“{value}” must be a number above 0; type it again.</source>
        <translation>„{value}“ muss eine Zahl über 0 sein; erneut eingeben.</translation>
    </message>
    <message>
        <source>too long</source>
        <translation>zu lang</translation>
    </message>
    <message>
        <source>too short</source>
        <translation>zu kurz</translation>
    </message>
    <message>
        <source>{found} steps/mm is what these parts give.</source>
        <translation>{found} Schritte/mm ist genau, was diese Teile ergeben.</translation>
    </message>
    <message>
        <source>{found} steps/mm cannot come from these parts (they give {calculated}): a part of {length} mm would be {effect} mm {sense} ({percent}). That is a wrong part in the list, no trimming; count again.</source>
        <translation>{found} Schritte/mm können nicht von diesen Teilen kommen (sie ergeben {calculated}): Ein Teil von {length} mm wäre {effect} mm {sense} ({percent}). Das ist ein falsches Teil in der Liste, kein Abgleich; nachzählen.</translation>
    </message>
    <message>
        <source>{found} steps/mm is not what these parts give ({calculated}); on {length} mm it makes {effect} mm {sense} ({percent}), less than the drive itself may be off. Enter {calculated}.</source>
        <translation>{found} Schritte/mm ist nicht, was diese Teile ergeben ({calculated}); auf {length} mm macht das {effect} mm {sense} ({percent}), weniger, als der Antrieb selbst abweichen kann. {calculated} eingeben.</translation>
    </message>
    <message>
        <source>{found} steps/mm cannot come from these parts (nearest: {calculated}). Someone may have tuned it: a part of {length} mm comes out {effect} mm {sense} ({percent}).</source>
        <translation>{found} Schritte/mm können nicht von diesen Teilen kommen (nächster Wert: {calculated}). Vielleicht hat jemand abgeglichen: Ein Teil von {length} mm wird {effect} mm {sense} ({percent}).</translation>
    </message>
    <message>
        <source>Crossed belts and deltas move by lengths on every motor; a rotary axis goes with the motion cartesian.</source>
        <translation>Bei gekreuzten Riemen und Deltas verfährt jeder Motor Längen; eine Drehachse gehört zur kartesischen Bewegung.</translation>
    </message>
    <message>
        <source>The three carriages differ in steps/mm; have they really different parts? Count again.</source>
        <translation>Die drei Schlitten unterscheiden sich in den Schritten/mm; haben sie wirklich verschiedene Teile? Nachzählen.</translation>
    </message>
    <message>
        <source>Layers are stacked along Z; is the rotary axis not X or Y?</source>
        <translation>Schichten werden längs Z gestapelt; ist die Drehachse nicht X oder Y?</translation>
    </message>
    <message>
        <source>On crossed belts both motors turn for X as well as for Y, so they share one value. {x} and {y} steps/mm would not change X against Y but shear every part by {shear} mm in 100 mm. Enter one set of parts for A and B.</source>
        <translation>Bei gekreuzten Riemen drehen beide Motoren für X wie für Y, sie haben also einen gemeinsamen Wert. {x} und {y} Schritte/mm würden X nicht gegen Y ändern, sondern jedes Teil um {shear} mm auf 100 mm verscheren. Einen Satz Teile für A und B eintragen.</translation>
    </message>
    <message>
        <source>Both motors A and B carry this one value. Unequal belts shear the part; they cannot make X differ from Y.</source>
        <translation>Beide Motoren A und B tragen diesen einen Wert. Ungleiche Riemen verscheren das Teil; sie können X nicht von Y abweichen lassen.</translation>
    </message>
    <message>
        <source>The value belongs to the carriages. Rod length and radius give the size in X and Y, this value does not.</source>
        <translation>Der Wert gehört zu den Schlitten. Das Maß in X und Y kommt von Stangenlänge und Radius, nicht von diesem Wert.</translation>
    </message>
    <message>
        <source>Each axis has its own value, calculated from its own parts.</source>
        <translation>Jede Achse hat ihren eigenen Wert, berechnet aus ihren eigenen Teilen.</translation>
    </message>
    <message>
        <source>Step grid</source>
        <translation>Schrittraster</translation>
    </message>
    <message>
        <source>{height} mm is {count} full steps: layers are alike.</source>
        <translation>{height} mm sind {count} Vollschritte: Die Schichten sind gleich.</translation>
    </message>
    <message>
        <source>Speed</source>
        <translation>Geschwindigkeit</translation>
    </message>
    <message>
        <source>{speed} mm/s is too near to the {ceiling} mm/s that {what} allow; use up to {usable} mm/s.</source>
        <translation>{speed} mm/s liegen zu nahe an den {ceiling} mm/s, der Grenze durch: {what}. Höchstens {usable} mm/s verwenden.</translation>
    </message>
    <message>
        <source>Use up to {usable} mm/s: {what} allow {ceiling} mm/s.</source>
        <translation>Bis {usable} mm/s verwenden; {ceiling} mm/s ist die Grenze durch: {what}.</translation>
    </message>
    <message>
        <source>That is the carriage&apos;s: near the rim it runs two to three times as fast as the nozzle.</source>
        <translation>Das gilt für den Schlitten: Nahe am Rand läuft er zwei- bis dreimal so schnell wie die Düse.</translation>
    </message>
    <message>
        <source>the steps of the controller</source>
        <translation>die Schritte der Steuerung</translation>
    </message>
    <message>
        <source>the windings of the motor</source>
        <translation>die Wicklungen des Motors</translation>
    </message>
    <message>
        <source>Extruder</source>
        <translation>Extruder</translation>
    </message>
    <message>
        <source>{flow} mm³/s of {filament} mm filament needs {needed} steps/s.</source>
        <translation>{flow} mm³/s bei {filament} mm Filament brauchen {needed} Schritte/s.</translation>
    </message>
    <message>
        <source>{flow} mm³/s of {filament} mm filament needs {needed} steps/s; this controller&apos;s ceiling is {rate}. Use up to {usable} mm³/s, or fewer microsteps at the extruder.</source>
        <translation>{flow} mm³/s bei {filament} mm Filament brauchen {needed} Schritte/s; die Grenze dieser Steuerung ist {rate}. Bis {usable} mm³/s verwenden oder am Extruder weniger Mikroschritte.</translation>
    </message>
    <message>
        <source>{flow} mm³/s needs {needed} steps/s of {rate}; up to {usable} mm³/s may be used.</source>
        <translation>{flow} mm³/s brauchen {needed} Schritte/s von {rate}; bis {usable} mm³/s sind möglich.</translation>
    </message>
    <message>
        <source>{load} % of the holding torque lets the motor lag by {lag} mm, which looks like a reversal of {twice} mm. One microstep holds {one} %; rounding to it scatters by {sd} mm.</source>
        <translation>{load} % des Haltemoments lassen den Motor um {lag} mm nacheilen, was wie eine Umkehrspanne von {twice} mm aussieht. Ein Mikroschritt hält {one} %; das Runden darauf streut um {sd} mm.</translation>
    </message>
    <message>
        <source>Load</source>
        <translation>Last</translation>
    </message>
    <message>
        <source>Friction above {one} % swallows single microsteps: finer ones are no finer travel.</source>
        <translation>Reibung über {one} % verschluckt einzelne Mikroschritte: Feinere ergeben keinen feineren Weg.</translation>
    </message>
    <message>
        <source>The width of the belt is above 0 mm; measure it.</source>
        <translation>Die Riemenbreite liegt über 0 mm; messen.</translation>
    </message>
    <message>
        <source>Its tension is {tension}; hold the belts of a pair against each other.</source>
        <translation>Seine Spannkraft beträgt {tension}; die Riemen eines Paars miteinander vergleichen.</translation>
    </message>
    <message>
        <source>Belt</source>
        <translation>Riemen</translation>
    </message>
    <message>
        <source>Parts come out {scale} off in X and Y although the bed probes flat: enter {measured} mm, then trim end stops and radius for a flat bed again. Leave the steps.</source>
        <translation>Teile weichen in X und Y um {scale} ab, obwohl das Bett eben angetastet wird: {measured} mm eintragen, dann Endlagen und Radius wieder auf ebenes Bett abgleichen. Die Schritte belassen.</translation>
    </message>
    <message>
        <source>Rods</source>
        <translation>Stangen</translation>
    </message>
    <message>
        <source>They agree: {scale} of the size in X and Y.</source>
        <translation>Sie stimmen überein: {scale} des Maßes in X und Y.</translation>
    </message>
    <message>
        <source>Type the sum of the steps since the reversal, 0 or more.</source>
        <translation>Die Summe der Schritte seit der Umkehr eingeben, mindestens 0.</translation>
    </message>
    <message>
        <source>Readings of the curve so far: {count}; a knee is looked for in {least} or more.</source>
        <translation>Messwerte der Kurve bisher: {count}; ein Knick wird ab {least} gesucht.</translation>
    </message>
    <message>
        <source>Commanded {commanded:.3f} mm, moved {moved:.3f} mm: where the axis begins to follow is not seen yet. Go on with further steps; see that the motors are powered.</source>
        <translation>Befohlen {commanded:.3f} mm, bewegt {moved:.3f} mm: Noch ist nicht zu sehen, wo die Achse zu folgen beginnt. Mit weiteren Schritten fortfahren; darauf achten, dass die Motoren bestromt sind.</translation>
    </message>
    <message>
        <source>Commanded {commanded:.3f} mm, moved {moved:.3f} mm: an axis does not move further than it is told. Check the unit of the steps, the graduation of the dial, and the steps per millimetre on page Drive.</source>
        <translation>Befohlen {commanded:.3f} mm, bewegt {moved:.3f} mm: Eine Achse bewegt sich nicht weiter als befohlen. Einheit der Schritte, Skalenwert der Messuhr und die Schritte/mm auf der Seite Antrieb prüfen.</translation>
    </message>
    <message>
        <source>Few readings beyond the knee: go on with further steps, then wind-up is told better.</source>
        <translation>Wenige Messwerte jenseits des Knicks: Mit weiteren Schritten lässt sich die Verspannung besser bestimmen.</translation>
    </message>
    <message>
        <source>The readings scatter by {sd:.3f} mm about the curve: smooth sliding, whole microsteps as steps, and a firm base make it finer.</source>
        <translation>Die Messwerte streuen um {sd:.3f} mm um die Kurve: Ruckfreies Gleiten, ganze Mikroschritte als Schritte und ein fester Halt der Messuhr machen es feiner.</translation>
    </message>
    <message>
        <source>{length} mm gives no ratio; enter a length above 0.</source>
        <translation>{length} mm ergibt kein Verhältnis; eine Länge über 0 eingeben.</translation>
    </message>
    <message>
        <source>An uncertainty of {U} mm must be 0 or more and below the reading of {length} mm.</source>
        <translation>Eine Unsicherheit von {U} mm muss mindestens 0 und kleiner als der Messwert {length} mm sein.</translation>
    </message>
    <message>
        <source>Shrinkage of {percent} % is outside 0 to 5 %.</source>
        <translation>Eine Schwindung von {percent} % liegt außerhalb von 0 bis 5 %.</translation>
    </message>
    <message>
        <source>A ratio of {ratio} is not possible; it is a length over a length.</source>
        <translation>Ein Verhältnis von {ratio} ist nicht möglich; es ist Länge durch Länge.</translation>
    </message>
    <message>
        <source>An uncertainty of {u} leaves a ratio of {ratio} open; measure again.</source>
        <translation>Eine Unsicherheit von {u} lässt ein Verhältnis von {ratio} offen; erneut messen.</translation>
    </message>
    <message>
        <source>{cause}: 100 mm come out as {length} mm. {remedy}</source>
        <translation>{cause}: 100 mm werden zu {length} mm. {remedy}</translation>
    </message>
    <message>
        <source>The parts as entered fit this reading (ratio {low} to {high}). Leave the steps per millimetre.</source>
        <translation>Die eingetragenen Teile passen zu diesem Messwert (Verhältnis {low} bis {high}). Die Schritte/mm belassen.</translation>
    </message>
    <message>
        <source>Wrong parts that give a ratio of {low} to {high}, the likeliest first:</source>
        <translation>Falsche Teile, die ein Verhältnis von {low} bis {high} ergeben, das wahrscheinlichste zuerst:</translation>
    </message>
    <message>
        <source>Off by {percent} %: too little for a wrong part. Leave the steps per millimetre; a size trial tells more.</source>
        <translation>Abweichung {percent} %: zu wenig für ein falsches Teil. Die Schritte/mm belassen; mehr zeigt ein Maßversuch.</translation>
    </message>
    <message>
        <source>No single wrong part gives a ratio of {low} to {high}: two slips at once, or slip and lost steps. Count every part again, then measure at low speed.</source>
        <translation>Kein einzelnes falsches Teil ergibt ein Verhältnis von {low} bis {high}: zwei Verwechslungen zugleich, oder eine und Schrittverlust. Jedes Teil nachzählen, dann bei niedriger Geschwindigkeit messen.</translation>
    </message>
    <message>
        <source>{found} steps/mm would belong to {cause}. {remedy}</source>
        <translation>Zu {found} Schritten/mm würde passen: {cause}. {remedy}</translation>
    </message>
    <message>
        <source>kind of drive</source>
        <translation>Antriebsart</translation>
    </message>
    <message>
        <source>reeving</source>
        <translation>Einscherung</translation>
    </message>
    <message>
        <source>full steps per turn</source>
        <translation>Vollschritte je Umdrehung</translation>
    </message>
    <message>
        <source>microsteps</source>
        <translation>Mikroschritte</translation>
    </message>
    <message>
        <source>pitch</source>
        <translation>Teilung</translation>
    </message>
    <message>
        <source>number of teeth</source>
        <translation>Zähnezahl</translation>
    </message>
    <message>
        <source>number of starts</source>
        <translation>Gangzahl</translation>
    </message>
    <message>
        <source>module</source>
        <translation>Modul</translation>
    </message>
    <message>
        <source>helix angle</source>
        <translation>Schrägungswinkel</translation>
    </message>
    <message>
        <source>diameter</source>
        <translation>Durchmesser</translation>
    </message>
    <message>
        <source>tolerance of the drive</source>
        <translation>Toleranz des Antriebs</translation>
    </message>
    <message>
        <source>A rotary axis has no reeving; enter its wheels as gear pairs.</source>
        <translation>Eine Drehachse hat keine Einscherung; ihre Räder als Zahnradpaare eintragen.</translation>
    </message>
    <message>
        <source>The {what} is missing; count or measure it.</source>
        <translation>Angabe fehlt: {what}; zählen oder messen.</translation>
    </message>
    <message>
        <source>A rack has a module or a pitch in mm: enter one of the two.</source>
        <translation>Eine Zahnstange hat einen Modul oder eine Teilung in mm: eines von beiden eintragen.</translation>
    </message>
    <message>
        <source>A drive has no part called “{name}”; leave it out.</source>
        <translation>Ein Antrieb hat kein Teil namens „{name}“; weglassen.</translation>
    </message>
    <message>
        <source>Choose what moves the carriage: belt, screw, rack or wheel; or a rotary axis.</source>
        <translation>Wählen, was den Schlitten bewegt: Riemen, Spindel, Zahnstange oder Rad; oder eine Drehachse.</translation>
    </message>
    <message>
        <source>“{text}” is not a gear pair; enter counted teeth, driven/driving, such as 43/12.</source>
        <translation>„{text}“ ist kein Zahnradpaar; gezählte Zähne eingeben, getrieben/treibend, etwa 43/12.</translation>
    </message>
    <message>
        <source>{ratio} is a rounded gear ratio; count the teeth and enter driven/driving, such as 43/12.</source>
        <translation>{ratio} ist eine gerundete Übersetzung; die Zähne zählen und getrieben/treibend eingeben, etwa 43/12.</translation>
    </message>
    <message>
        <source>Gear pairs are counted teeth, driven/driving, such as 43/12.</source>
        <translation>Zahnradpaare sind gezählte Zähne, getrieben/treibend, etwa 43/12.</translation>
    </message>
    <message>
        <source>{ratio} is a rounded gear ratio; enter the counted teeth, driven/driving. Is it {driven}/{driving}?</source>
        <translation>{ratio} ist eine gerundete Übersetzung; die gezählten Zähne eintragen, getrieben/treibend. Ist es {driven}/{driving}?</translation>
    </message>
    <message>
        <source>Gear pair {driven}/{driving}: each wheel has 1 to 1000 teeth; count again.</source>
        <translation>Zahnradpaar {driven}/{driving}: Jedes Rad hat 1 bis 1000 Zähne; nachzählen.</translation>
    </message>
    <message>
        <source>“{value}” is no {what} known here; choose one of {choices}.</source>
        <translation>{what}: „{value}“ ist hier nicht bekannt; zur Wahl: {choices}.</translation>
    </message>
    <message>
        <source>The {what} “{value}” is not a number; type it again.</source>
        <translation>{what}: „{value}“ ist keine Zahl; erneut eingeben.</translation>
    </message>
    <message>
        <source>Microsteps {value} is not a power of two; drivers offer 1, 2, 4 … 256.</source>
        <translation>Mikroschritte {value} sind keine Zweierpotenz; Treiber bieten 1, 2, 4 … 256.</translation>
    </message>
    <message>
        <source>The {what} {value}{unit} is outside {low} to {high}{unit}; check the decimal mark and the unit.</source>
        <translation>{what}: {value}{unit} liegt außerhalb von {low} bis {high}{unit}; Dezimalzeichen und Einheit prüfen.</translation>
    </message>
    <message>
        <source>{value} teeth is not possible; count again, a tooth count is a whole number.</source>
        <translation>{value} Zähne sind nicht möglich; nachzählen, eine Zähnezahl ist ganz.</translation>
    </message>
    <message>
        <source>{value} starts is not possible; count the thread beginnings at the end of the screw.</source>
        <translation>{value} Gänge sind nicht möglich; die Gewindeanfänge am Spindelende zählen.</translation>
    </message>
    <message>
        <source>{value}° is the step angle; enter the full steps per turn, {steps}.</source>
        <translation>{value}° ist der Schrittwinkel; die Vollschritte je Umdrehung eintragen, {steps}.</translation>
    </message>
    <message>
        <source>{value} full steps is not possible; enter 360 divided by the step angle, a whole number.</source>
        <translation>{value} Vollschritte sind nicht möglich; 360 geteilt durch den Schrittwinkel eintragen, eine ganze Zahl.</translation>
    </message>
    <message>
        <source>A gear has whole teeth: “{value}” is not a tooth count; count again.</source>
        <translation>Ein Zahnrad hat ganze Zähne: „{value}“ ist keine Zähnezahl; nachzählen.</translation>
    </message>
    <message>
        <source>{steps} full steps per turn is unusual; most motors have 200 (1.8°) or 400 (0.9°). Are microsteps in it?</source>
        <translation>{steps} Vollschritte je Umdrehung sind unüblich; die meisten Motoren haben 200 (1,8°) oder 400 (0,9°). Sind Mikroschritte darin?</translation>
    </message>
    <message>
        <source>{teeth} teeth is unusual, most wheels have 8 to 120; count again, one tooth marked.</source>
        <translation>{teeth} Zähne sind unüblich, die meisten Räder haben 8 bis 120; nachzählen, einen Zahn markieren.</translation>
    </message>
    <message>
        <source>A smooth wheel gives a nominal value only: {off} mm on {diameter} mm is {percent} %. Measure the travel.</source>
        <translation>Ein glattes Rad ergibt nur einen Nennwert: {off} mm auf {diameter} mm sind {percent} %. Den Verfahrweg messen.</translation>
    </message>
    <message>
        <source>Without a gear pair the motor&apos;s shaft turns with the axis; is that so?</source>
        <translation>Ohne Zahnradpaar dreht sich die Motorwelle mit der Achse; ist das so?</translation>
    </message>
    <message>
        <source>Module {module} mm is unusual (0.3 to 4 mm); is it the pitch of the rack?</source>
        <translation>Modul {module} mm ist unüblich (0,3 bis 4 mm); ist das die Teilung der Zahnstange?</translation>
    </message>
    <message>
        <source>A belt pitch of {pitch} mm is not in the catalogue; the nearest is {nearest} mm ({name}). Measure over ten teeth.</source>
        <translation>Eine Riementeilung von {pitch} mm steht nicht im Katalog; die nächste ist {nearest} mm ({name}). Über zehn Zähne messen.</translation>
    </message>
    <message>
        <source>{pitch} mm with {starts} starts: is {pitch} mm the thread pitch (travel {lead} mm per turn) or already the travel per turn?</source>
        <translation>{pitch} mm bei {starts} Gängen: Ist {pitch} mm die Gewindeteilung (Weg {lead} mm je Umdrehung) oder schon der Weg je Umdrehung?</translation>
    </message>
    <message>
        <source>Travel of {lead} mm per turn is unusual for a screw (0.35 to 100 mm); check pitch and starts.</source>
        <translation>Ein Weg von {lead} mm je Umdrehung ist für eine Spindel unüblich (0,35 bis 100 mm); Teilung und Gangzahl prüfen.</translation>
    </message>
    <message>
        <source>Does the carriage really move {ratio} times as far as the belt? Mark the belt and look.</source>
        <translation>Bewegt sich der Schlitten wirklich {ratio}-mal so weit wie der Riemen? Den Riemen markieren und ansehen.</translation>
    </message>
    <message>
        <source>No pair yet: read the same target from the other side as well.</source>
        <translation>Noch kein Paar: dasselbe Ziel auch von der anderen Seite ablesen.</translation>
    </message>
    <message>
        <source>One pair only ({place}): it does not tell how far pairs scatter. Read {count} pairs at each place.</source>
        <translation>Nur ein Paar ({place}): Es zeigt nicht, wie weit Paare streuen. An jeder Stelle {count} Paare ablesen.</translation>
    </message>
    <message>
        <source>{place}: the difference changes its sign from cycle to cycle ({listed} mm), which play never does: the base of the indicator moves. Clamp it and read these pairs again.</source>
        <translation>{place}: Die Differenz wechselt von Zyklus zu Zyklus das Vorzeichen ({listed} mm), was Spiel nie tut: Der Fuß der Messuhr bewegt sich. Festspannen und diese Paare erneut ablesen.</translation>
    </message>
    <message>
        <source>{count} pairs at one place are few; {usual} make a sound interval.</source>
        <translation>{count} Paare an einer Stelle sind wenige; {usual} ergeben einen verlässlichen Bereich.</translation>
    </message>
    <message>
        <source>One pair only at {places}: not counted.</source>
        <translation>Nur ein Paar an {places}: nicht gezählt.</translation>
    </message>
    <message>
        <source>Play differs along an axis: read at both ends and in the middle.</source>
        <translation>Spiel ist längs einer Achse verschieden: an beiden Enden und in der Mitte ablesen.</translation>
    </message>
    <message>
        <source>The first pair of a place stands out, as the first one after power-on does: leave it out and read on.</source>
        <translation>Das erste Paar einer Stelle fällt auf, wie das erste nach dem Einschalten: weglassen und weiter ablesen.</translation>
    </message>
    <message>
        <source>A pair stands out from the others of its place: read it again.</source>
        <translation>Ein Paar fällt unter den anderen seiner Stelle auf: erneut ablesen.</translation>
    </message>
    <message>
        <source>From {low} to {high} mm is no range; the second must be the larger.</source>
        <translation>Von {low} bis {high} mm ist kein Bereich; der zweite Wert muss der größere sein.</translation>
    </message>
    <message>
        <source>A layer height of {height} mm is not possible.</source>
        <translation>Eine Schichthöhe von {height} mm ist nicht möglich.</translation>
    </message>
    <message>
        <source>Layer {height} mm is {count} full steps on this drive; layers will not be alike. Nearest clean heights: {clean}.</source>
        <translation>Schicht {height} mm sind bei diesem Antrieb {count} Vollschritte; die Schichten werden ungleich. Nächste saubere Höhen: {clean}.</translation>
    </message>
    <message>
        <source>A step rate of {rate} per second is not possible.</source>
        <translation>Eine Schrittrate von {rate} je Sekunde ist nicht möglich.</translation>
    </message>
    <message>
        <source>A speed of {speed} mm/s is not possible.</source>
        <translation>Eine Geschwindigkeit von {speed} mm/s ist nicht möglich.</translation>
    </message>
    <message>
        <source>{speed} mm/s at {steps} steps/mm needs {needed} steps/s; this controller&apos;s ceiling is {rate}. Most here {most} mm/s; or microsteps {microsteps}.</source>
        <translation>{speed} mm/s bei {steps} Schritten/mm brauchen {needed} Schritte/s; die Grenze dieser Steuerung ist {rate}. Höchstens {most} mm/s; oder Mikroschritte {microsteps}.</translation>
    </message>
    <message>
        <source>{speed} mm/s at {steps} steps/mm needs {needed} steps/s; this controller&apos;s ceiling is {rate}. Most here {most} mm/s, even with full steps.</source>
        <translation>{speed} mm/s bei {steps} Schritten/mm brauchen {needed} Schritte/s; die Grenze dieser Steuerung ist {rate}. Höchstens {most} mm/s, selbst mit Vollschritten.</translation>
    </message>
    <message>
        <source>A load of {load} % of the holding torque is not possible; type 0 to 99.</source>
        <translation>Eine Last von {load} % des Haltemoments ist nicht möglich; 0 bis 99 eingeben.</translation>
    </message>
    <message>
        <source>Two targets, each approached twice from either side, are the least ({count} so far); at one target alone take the quick cycle.</source>
        <translation>Mindestens nötig sind zwei Ziele, jedes von beiden Seiten zweimal angefahren (bisher {count}); für ein einziges Ziel den Kurzzyklus nehmen.</translation>
    </message>
    <message>
        <source>Targets without two readings from either side: {count}; left out.</source>
        <translation>Ziele ohne zwei Messwerte von jeder Seite: {count}; weggelassen.</translation>
    </message>
    <message>
        <source>ISO 230-2 asks for {targets} targets and {cycles} cycles; here are {some} and {few}.</source>
        <translation>ISO 230-2 verlangt {targets} Ziele und {cycles} Zyklen; hier sind es {some} und {few}.</translation>
    </message>
    <message>
        <source>The dial must read to more than 0 and less than 1 mm; type its graduation.</source>
        <translation>Der Skalenwert der Messuhr muss über 0 und unter 1 mm liegen; ihn eingeben.</translation>
    </message>
    <message>
        <source>{reading:g} mm is {off:.2f} mm from the other readings of the same approach; type it again, or leave it out with a reason.</source>
        <translation>{reading:g} mm liegt {off:.2f} mm neben den anderen Messwerten derselben Anfahrt; erneut eingeben oder mit Grund weglassen.</translation>
    </message>
    <message>
        <source>Reversal {value:.2f} mm is more than the teeth of a belt allow: something is loose. Look at the clamp of the carriage and the grub screws, then measure again; this is not kept as a result.</source>
        <translation>Umkehrspanne {value:.2f} mm ist mehr, als die Zähne eines Riemens zulassen: Etwas ist lose. Riemenklemme des Schlittens und Gewindestifte ansehen, dann erneut messen; das wird nicht als Ergebnis behalten.</translation>
    </message>
    <message>
        <source>This drive moves by lengths and has no steps per degree; choose a rotary axis.</source>
        <translation>Dieser Antrieb verfährt Längen und hat keine Schritte je Grad; eine Drehachse wählen.</translation>
    </message>
    <message>
        <source>{motor} ÷ 360° = {steps} steps/°</source>
        <translation>{motor} ÷ 360° = {steps} Schritte/°</translation>
    </message>
    <message>
        <source>{fitted} teeth where {entered} are entered</source>
        <translation>{fitted} Zähne statt der eingetragenen {entered}</translation>
    </message>
    <message>
        <source>Count the wheel that moves the carriage, one tooth marked; an idler does not count.</source>
        <translation>Das Rad zählen, das den Schlitten bewegt, einen Zahn markieren; eine Umlenkrolle zählt nicht.</translation>
    </message>
    <message>
        <source>a belt of {fitted} mm pitch where {entered} mm is entered</source>
        <translation>ein Riemen mit {fitted} mm Teilung statt der eingetragenen {entered} mm</translation>
    </message>
    <message>
        <source>Measure the belt over ten teeth.</source>
        <translation>Den Riemen über zehn Zähne messen.</translation>
    </message>
    <message>
        <source>{fitted} thread starts where {entered} is entered</source>
        <translation>{fitted} Gewindegänge statt der eingetragenen {entered}</translation>
    </message>
    <message>
        <source>Count the thread beginnings at the end of the screw.</source>
        <translation>Die Gewindeanfänge am Spindelende zählen.</translation>
    </message>
    <message>
        <source>the {entered} mm entered as thread pitch is already the travel per turn</source>
        <translation>die als Gewindeteilung eingetragenen {entered} mm sind schon der Weg je Umdrehung</translation>
    </message>
    <message>
        <source>Turn the screw once and measure how far the nut goes.</source>
        <translation>Die Spindel einmal drehen und messen, wie weit die Mutter geht.</translation>
    </message>
    <message>
        <source>a screw of {fitted} mm travel per turn where {entered} mm is entered</source>
        <translation>eine Spindel mit {fitted} mm Weg je Umdrehung statt der eingetragenen {entered} mm</translation>
    </message>
    <message>
        <source>Measure the rack over ten teeth: ten times the pitch, or ten times π times the module.</source>
        <translation>Die Zahnstange über zehn Zähne messen: zehnmal die Teilung oder zehnmal π mal Modul.</translation>
    </message>
    <message>
        <source>{fitted} where {entered} is entered: module and pitch mistaken</source>
        <translation>{fitted} statt eingetragen {entered}: Modul und Teilung verwechselt</translation>
    </message>
    <message>
        <source>a rack of {fitted} where {entered} is entered</source>
        <translation>eine Zahnstange mit {fitted} statt eingetragen {entered}</translation>
    </message>
    <message>
        <source>pitch {pitch} mm</source>
        <translation>Teilung {pitch} mm</translation>
    </message>
    <message>
        <source>module {module} mm</source>
        <translation>Modul {module} mm</translation>
    </message>
    <message>
        <source>a rack of {fitted}° helix where {entered}° is entered</source>
        <translation>eine Zahnstange mit {fitted}° Schrägung statt der eingetragenen {entered}°</translation>
    </message>
    <message>
        <source>Look at the teeth from above: straight across, or slanted?</source>
        <translation>Die Zähne von oben ansehen: gerade oder schräg?</translation>
    </message>
    <message>
        <source>the radius of the wheel entered as its diameter</source>
        <translation>Radius des Rads als Durchmesser eingetragen</translation>
    </message>
    <message>
        <source>twice the diameter of the wheel entered</source>
        <translation>doppelter Durchmesser des Rads eingetragen</translation>
    </message>
    <message>
        <source>Measure across the wheel, band included.</source>
        <translation>Über das Rad messen, Band eingeschlossen.</translation>
    </message>
    <message>
        <source>{fitted} microsteps where {entered} are entered</source>
        <translation>{fitted} Mikroschritte statt der eingetragenen {entered}</translation>
    </message>
    <message>
        <source>Look at the driver&apos;s switches and at its setting in the controller; only one of them counts.</source>
        <translation>Die Schalter am Treiber und seine Einstellung in der Steuerung ansehen; nur eines davon zählt.</translation>
    </message>
    <message>
        <source>a motor of {fitted} full steps per turn where {entered} are entered</source>
        <translation>ein Motor mit {fitted} Vollschritten je Umdrehung statt der eingetragenen {entered}</translation>
    </message>
    <message>
        <source>Read the plate of the motor: 1.8° is 200, 0.9° is 400 full steps.</source>
        <translation>Das Typenschild des Motors lesen: 1,8° sind 200, 0,9° sind 400 Vollschritte.</translation>
    </message>
    <message>
        <source>Count the teeth of both wheels and see which one sits on the motor.</source>
        <translation>Die Zähne beider Räder zählen und nachsehen, welches auf dem Motor sitzt.</translation>
    </message>
    <message>
        <source>the gear pair {entered} entered upside down</source>
        <translation>Zahnradpaar {entered} verkehrt herum eingetragen</translation>
    </message>
    <message>
        <source>no gear pair {entered} in the drive</source>
        <translation>kein Zahnradpaar {entered} im Antrieb</translation>
    </message>
    <message>
        <source>a gear pair {fitted} where {entered} is entered</source>
        <translation>ein Zahnradpaar {fitted} statt eingetragen {entered}</translation>
    </message>
    <message>
        <source>a gear pair {fitted} that is not entered</source>
        <translation>ein nicht eingetragenes Zahnradpaar {fitted}</translation>
    </message>
    <message>
        <source>as far as the belt</source>
        <translation>so weit wie der Riemen</translation>
    </message>
    <message>
        <source>half as far as the belt</source>
        <translation>halb so weit wie der Riemen</translation>
    </message>
    <message>
        <source>twice as far as the belt</source>
        <translation>doppelt so weit wie der Riemen</translation>
    </message>
    <message>
        <source>a carriage that goes {fitted}, not {entered}</source>
        <translation>ein Schlitten, der sich {fitted} bewegt, nicht {entered}</translation>
    </message>
    <message>
        <source>Mark the belt and look how far the carriage goes with it.</source>
        <translation>Den Riemen markieren und ansehen, wie weit der Schlitten mitgeht.</translation>
    </message>
    <message>
        <source>a length in {meant} read as {taken}</source>
        <translation>eine Länge in {meant} als {taken} gelesen</translation>
    </message>
    <message>
        <source>Look at the unit of the caliper and of the drawing.</source>
        <translation>Die Einheit von Messschieber und Zeichnung ansehen.</translation>
    </message>
    <message>
        <source>The length along the square must be above zero; type what was travelled.</source>
        <translation>Die Länge am Anschlagwinkel muss über null liegen; eingeben, was verfahren wurde.</translation>
    </message>
    <message>
        <source>A square proves nothing one way round: read it standing one way and turned over, each once at least.</source>
        <translation>Ein Anschlagwinkel in nur einer Lage beweist nichts: stehend und umgeschlagen ablesen, je mindestens einmal.</translation>
    </message>
    <message>
        <source>{change:.2f} mm in {length:g} mm is {degrees:.1f}°, more than 2°: that would be seen by eye. Count both readings positive where the carriage comes towards + of the first axis, and read again.</source>
        <translation>{change:.2f} mm auf {length:g} mm sind {degrees:.1f}°, mehr als 2°: das sähe man mit bloßem Auge. Beide Messwerte positiv zählen, wo der Schlitten nach + der ersten Achse kommt, und erneut ablesen.</translation>
    </message>
    <message>
        <source>reversal, not on record</source>
        <translation>Umkehrspanne, nicht erfasst</translation>
    </message>
    <message>
        <source>reversal</source>
        <translation>Umkehrspanne</translation>
    </message>
    <message>
        <source>repeatability</source>
        <translation>Wiederholpräzision</translation>
    </message>
    <message>
        <source>resolution</source>
        <translation>Auflösung</translation>
    </message>
    <message>
        <source>sides</source>
        <translation>Seiten</translation>
    </message>
    <message>
        <source>zero of the jaws</source>
        <translation>Nullpunkt der Messschenkel</translation>
    </message>
    <message>
        <source>scale of the instrument</source>
        <translation>Maßstab des Messmittels</translation>
    </message>
    <message>
        <source>The diagonals {d1:.2f} and {d2:.2f} mm differ by {off:.2f} mm, {degrees:.1f}° on sides of {a:g} and {b:g} mm. A machine so far out is seen by eye: look whether the same pillars were read, or a digit was swapped.</source>
        <translation>Die Diagonalen {d1:.2f} und {d2:.2f} mm unterscheiden sich um {off:.2f} mm, {degrees:.1f}° bei Seiten von {a:g} und {b:g} mm. Eine so schiefe Maschine sieht man mit bloßem Auge: nachsehen, ob dieselben Säulen gemessen oder Ziffern vertauscht wurden.</translation>
    </message>
    <message>
        <source>Read {side} only: the kept reversal errors alone can fake {per_100:.3f} mm in 100 mm, either way.</source>
        <translation>Nur {side} gemessen: Die behaltenen Umkehrspannen allein können {per_100:.3f} mm auf 100 mm vortäuschen, in beide Richtungen.</translation>
    </message>
    <message>
        <source>Read {side} only: unequal reversal fakes an angle that changes sign with the printing direction, perhaps {per_100:.2f} mm in 100 mm. Read the other side of the pillars too.</source>
        <translation>Nur {side} gemessen: Ungleiche Umkehrspanne täuscht eine Schiefstellung vor, die mit der Druckrichtung das Vorzeichen wechselt, vielleicht {per_100:.2f} mm auf 100 mm. Auch die andere Seite der Säulen messen.</translation>
    </message>
    <message>
        <source>Sides of {a:g} and {b:g} mm with equal diagonals: that is scale along {first} and {second}, not an angle; it belongs to Size error.</source>
        <translation>Seiten von {a:g} und {b:g} mm mit gleichen Diagonalen: Das ist Maßstab längs {first} und {second}, keine Schiefstellung; es gehört zur Maßabweichung.</translation>
    </message>
    <message>
        <source>A push of {force:g} N is not possible here; pull with 5 to 20 N on a luggage scale, {most:g} at most.</source>
        <translation>Eine Kraft von {force:g} N ist hier nicht möglich; mit 5 bis 20 N an einer Kofferwaage ziehen, höchstens {most:g}.</translation>
    </message>
    <message>
        <source>The scale must be true to more than 0 and less than half of the push of {force:g} N; type what its maker states, or what a known mass showed.</source>
        <translation>Die Waage muss auf mehr als 0 und weniger als die Hälfte der Kraft von {force:g} N genau sein; eingeben, was der Hersteller angibt oder eine bekannte Masse gezeigt hat.</translation>
    </message>
    <message>
        <source>One push only: it does not tell how far pushes scatter. Read {count} pairs on each side.</source>
        <translation>Nur einmal gedrückt: Das zeigt nicht, wie weit die Werte streuen. An jeder Seite {count} Paare ablesen.</translation>
    </message>
    <message>
        <source>No pair yet: read the dial at rest and while the push is held.</source>
        <translation>Noch kein Paar: die Messuhr in Ruhe und bei gehaltener Kraft ablesen.</translation>
    </message>
    <message>
        <source>{side}: {force:g} N move it by {moved:.2f} mm, so something is loose or the motors are off. Look at clamp and grub screws, switch the motors on, push again; this is not kept as a result.</source>
        <translation>{side}: {force:g} N verschieben die Achse um {moved:.2f} mm, also ist etwas lose oder die Motoren sind aus. Riemenklemme und Gewindestifte ansehen, Motoren einschalten, erneut drücken; das wird nicht als Ergebnis behalten.</translation>
    </message>
    <message>
        <source>Along {axis}</source>
        <translation>Längs {axis}</translation>
    </message>
    <message>
        <source>Sideways to {axis}</source>
        <translation>Quer zu {axis}</translation>
    </message>
    <message>
        <source>{count} pushes on one side are few; {usual} make a sound interval.</source>
        <translation>{count}-mal drücken ist an einer Seite wenig; {usual}-mal ergibt einen verlässlichen Bereich.</translation>
    </message>
    <message>
        <source>Push along the axis and sideways: belt and slide are told apart by both.</source>
        <translation>Längs der Achse und quer drücken: Erst beides unterscheidet Riemen und Führung.</translation>
    </message>
    <message>
        <source>At radius {radius} mm one microstep is {step} mm; it grows with the radius.</source>
        <translation>Bei Radius {radius} mm ist ein Mikroschritt {step} mm; er wächst mit dem Radius.</translation>
    </message>
    <message>
        <source>A centre {off} mm out of place is not possible; type 0 to {most} mm.</source>
        <translation>Eine um {off} mm versetzte Mitte ist nicht möglich; 0 bis {most} mm eingeben.</translation>
    </message>
    <message>
        <source>A centre {off} mm out of place makes sizes up to {twice} mm wrong, with the other sign across the centre: set the centre, leave the steps.</source>
        <translation>Eine um {off} mm versetzte Mitte macht Maße bis zu {twice} mm falsch, jenseits der Mitte mit anderem Vorzeichen: die Mitte einstellen, die Schritte belassen.</translation>
    </message>
    <message>
        <source>Turning</source>
        <translation>Drehen</translation>
    </message>
    <message>
        <source>Use up to {rate} °/s, {turns} turns a minute.</source>
        <translation>Bis {rate} °/s verwenden, {turns} Umdrehungen je Minute.</translation>
    </message>
    <message>
        <source>At {speed} mm/s nothing within {least} mm of the centre can be printed: the axis would have to turn faster.</source>
        <translation>Mit {speed} mm/s lässt sich näher als {least} mm an der Mitte nichts drucken: Die Achse müsste schneller drehen.</translation>
    </message>
    <message>
        <source>A reading is missing or not a finite number; remove or retype it.</source>
        <translation>Ein Messwert fehlt oder ist keine endliche Zahl; entfernen oder neu eingeben.</translation>
    </message>
    <message>
        <source>A knee is looked for in 5 readings at 4 places or more; take more.</source>
        <translation>Ein Knick wird ab 5 Messwerten an 4 Stellen gesucht; weitere aufnehmen.</translation>
    </message>
    <message>
        <source>The change that is looked for must not be zero.</source>
        <translation>Die gesuchte Änderung darf nicht null sein.</translation>
    </message>
    <message>
        <source>There are no factors for groups of {n}; choose from 2 to 10.</source>
        <translation>Für Gruppen von {n} gibt es keine Faktoren; 2 bis 10 wählen.</translation>
    </message>
    <message>
        <source>The width of the limits must be above zero; 3 is usual.</source>
        <translation>Die Breite der Grenzen muss über null liegen; üblich ist 3.</translation>
    </message>
    <message>
        <source>The weight of the newest result must be above 0 and up to 1; 0.2 is usual for slow wear.</source>
        <translation>Das Gewicht des neuesten Ergebnisses muss über 0 und höchstens 1 sein; für langsamen Verschleiß ist 0,2 üblich.</translation>
    </message>
    <message>
        <source>There is no result at the beginning of a phase; take the event away.</source>
        <translation>Am Anfang einer Phase steht kein Ergebnis; das Ereignis wegnehmen.</translation>
    </message>
    <message>
        <source>There is no kept result yet; keep the first one.</source>
        <translation>Noch kein behaltenes Ergebnis; das erste behalten.</translation>
    </message>
    <message>
        <source>Result {row} is not a finite number; withdraw its trial.</source>
        <translation>Ergebnis {row} ist keine endliche Zahl; den Versuch zurückziehen.</translation>
    </message>
    <message>
        <source>tips against root</source>
        <translation>Spitzen gegen Wurzel der Schenkel</translation>
    </message>
    <message>
        <source>reference</source>
        <translation>Normal</translation>
    </message>
    <message>
        <source>land of the blades</source>
        <translation>Schneidenfase</translation>
    </message>
    <message>
        <source>A blade of {land:g} mm does not fit into a bore of {bore:g} mm; check both.</source>
        <translation>Eine Schneide von {land:g} mm passt nicht in eine Bohrung von {bore:g} mm; beides prüfen.</translation>
    </message>
    <message>
        <source>temperature apart</source>
        <translation>Temperaturunterschied</translation>
    </message>
    <message>
        <source>Each reference was read once; read one of them three times to see the scatter.</source>
        <translation>Jedes Normal wurde nur einmal gemessen; eines dreimal messen, um die Streuung zu sehen.</translation>
    </message>
    <message>
        <source>The resolution is above zero: type the worth of the last digit.</source>
        <translation>Die Auflösung liegt über null: den Wert der letzten Stelle eingeben.</translation>
    </message>
    <message>
        <source>The limit of error is above zero; type what the maker states, without a sign.</source>
        <translation>Die Fehlergrenze liegt über null; die Herstellerangabe ohne Vorzeichen eingeben.</translation>
    </message>
    <message>
        <source>Temperatures lie zero or more apart; type for example 2.</source>
        <translation>Temperaturen liegen null oder mehr auseinander; zum Beispiel 2 eingeben.</translation>
    </message>
    <message>
        <source>Row {row}: “{part}” is not read with a {kind}; choose another part.</source>
        <translation>Zeile {row}: „{part}“ passt nicht zu diesem Messmittel ({kind}); einen anderen Teil wählen.</translation>
    </message>
    <message>
        <source>Row {row}: type the value of the reference.</source>
        <translation>Zeile {row}: den Wert des Normals eingeben.</translation>
    </message>
    <message>
        <source>Row {row}: how well is the reference known? Type plus and minus how much, from its certificate or its class.</source>
        <translation>Zeile {row}: Wie gut ist das Normal bekannt? Plus und minus wie viel eingeben, nach Kalibrierschein oder Klasse.</translation>
    </message>
    <message>
        <source>Row {row}: the reference is known to ± {half_width:g} {unit}, the limit of error is {limit:g} {unit}, so it can decide nothing. The width of a bearing is no gauge: take its outside diameter or its bore.</source>
        <translation>Zeile {row}: Das Normal ist auf ± {half_width:g} {unit} bekannt, die Fehlergrenze ist {limit:g} {unit}; so kann es nichts entscheiden. Die Breite eines Wälzlagers ist kein Normal: Außendurchmesser oder Bohrung nehmen.</translation>
    </message>
    <message>
        <source>Score three different steps at least by every criterion that counts.</source>
        <translation>Mindestens drei verschiedene Stufen nach jedem Kriterium bewerten, das zählt.</translation>
    </message>
    <message>
        <source>A drift is fitted to {fewest} readings at different times or more; go on reading.</source>
        <translation>Eine Drift wird ab {fewest} Messwerten zu verschiedenen Zeiten angepasst; weiter ablesen.</translation>
    </message>
    <message>
        <source>A component of the uncertainty is missing or not finite; give its real size.</source>
        <translation>Ein Beitrag zur Unsicherheit fehlt oder ist nicht endlich; seine wirkliche Größe angeben.</translation>
    </message>
    <message>
        <source>Components and degrees of freedom differ in number; give one for each component.</source>
        <translation>Zahl der Beiträge und der Freiheitsgrade ist ungleich; für jeden Beitrag einen angeben.</translation>
    </message>
    <message>
        <source>Degrees of freedom must be above zero; two readings give one degree of freedom.</source>
        <translation>Freiheitsgrade müssen über null liegen; zwei Messwerte ergeben einen Freiheitsgrad.</translation>
    </message>
    <message>
        <source>normal</source>
        <translation>Normal</translation>
    </message>
    <message>
        <source>triangle</source>
        <translation>Dreieck</translation>
    </message>
    <message>
        <source>U-shaped</source>
        <translation>U-förmig</translation>
    </message>
    <message>
        <source>t</source>
        <translation>t</translation>
    </message>
    <message>
        <source>Degrees of freedom are above zero; type how many there are.</source>
        <translation>Freiheitsgrade sind größer als null; eintippen, wie viele es sind.</translation>
    </message>
    <message>
        <source>A half-width is zero or more; type what the limits are apart, halved.</source>
        <translation>Eine Halbweite ist null oder größer; den halben Abstand der Grenzen eingeben.</translation>
    </message>
    <message>
        <source>The doubt about an uncertainty is zero or more; type for example 0.25.</source>
        <translation>Der Zweifel an einer Unsicherheit ist null oder größer; zum Beispiel 0,25 eingeben.</translation>
    </message>
    <message>
        <source>One reading does not scatter; read it twice at least.</source>
        <translation>Ein einzelner Messwert streut nicht; mindestens zweimal messen.</translation>
    </message>
    <message>
        <source>A half-width is zero or more, and one of the two is above zero.</source>
        <translation>Eine Halbweite ist null oder größer, und eine der beiden liegt über null.</translation>
    </message>
    <message>
        <source>read zero five times</source>
        <translation>den Nullpunkt fünfmal ablesen</translation>
    </message>
    <message>
        <source>read a reference three times</source>
        <translation>ein Normal dreimal messen</translation>
    </message>
    <message>
        <source>read a bore three times</source>
        <translation>eine Bohrung dreimal messen</translation>
    </message>
    <message>
        <source>set the depth rod on a flat three times</source>
        <translation>das Tiefenmaß dreimal auf eine ebene Fläche setzen</translation>
    </message>
    <message>
        <source>close the jaws and hold them against a lamp</source>
        <translation>die Messschenkel schließen und gegen eine Lampe halten</translation>
    </message>
    <message>
        <source>re-seat it on one gauge ten times</source>
        <translation>zehnmal an einem Normal neu ansetzen</translation>
    </message>
    <message>
        <source>dial indicator</source>
        <translation>Messuhr</translation>
    </message>
    <message>
        <source>balance</source>
        <translation>Waage</translation>
    </message>
    <message>
        <source>thermometer</source>
        <translation>Thermometer</translation>
    </message>
    <message>
        <source>other length instrument</source>
        <translation>anderes Längenmessmittel</translation>
    </message>
    <message>
        <source>re-seated</source>
        <translation>neu angesetzt</translation>
    </message>
    <message>
        <source>not looked</source>
        <translation>ungesehen</translation>
    </message>
    <message>
        <source>no light</source>
        <translation>kein Licht</translation>
    </message>
    <message>
        <source>light seen</source>
        <translation>Lichtspalt</translation>
    </message>
    <message>
        <source>Full check</source>
        <translation>Volle Prüfung</translation>
    </message>
    <message>
        <source>Zero only</source>
        <translation>Nur Nullpunkt</translation>
    </message>
    <message>
        <source>Gauge blocks</source>
        <translation>Endmaße</translation>
    </message>
    <message>
        <source>Hand only</source>
        <translation>Nur Hand</translation>
    </message>
    <message>
        <source>Two people</source>
        <translation>2 Personen</translation>
    </message>
    <message>
        <source>Own readings</source>
        <translation>Eigene Werte</translation>
    </message>
    <message>
        <source>There is no usual limit of error of a {kind} at {value} {unit}; type the one its maker states.</source>
        <translation>Für dieses Messmittel ({kind}) gibt es bei {value} {unit} keine übliche Fehlergrenze; die Herstellerangabe eingeben.</translation>
    </message>
    <message>
        <source>zero again</source>
        <translation>Null erneut</translation>
    </message>
    <message>
        <source>2nd person</source>
        <translation>2. Person</translation>
    </message>
    <message>
        <source>own reference</source>
        <translation>eigenes Normal</translation>
    </message>
    <message>
        <source>A ladder has 3 to 20 steps, not {count}.</source>
        <translation>Eine Leiter hat 3 bis 20 Stufen, nicht {count}.</translation>
    </message>
    <message>
        <source>The last step must lie above the first one, {low:g}; retype it.</source>
        <translation>Die letzte Stufe muss über der ersten liegen, {low:g}; neu eingeben.</translation>
    </message>
    <message>
        <source>Steps in equal ratios begin above 0; retype the first step.</source>
        <translation>Stufen in gleichem Verhältnis beginnen über 0; die erste Stufe neu eingeben.</translation>
    </message>
    <message>
        <source>A value is missing or not a number; type it or leave the row empty.</source>
        <translation>Ein Wert fehlt oder ist keine Zahl; eingeben oder die Zeile leer lassen.</translation>
    </message>
    <message>
        <source>A parabola needs 5 values at 3 steps or more; print and read more.</source>
        <translation>Eine Parabel braucht 5 Werte bei mindestens 3 Stufen; mehr drucken und messen.</translation>
    </message>
    <message>
        <source>Each value needs an uncertainty above zero; type it.</source>
        <translation>Jeder Wert braucht eine Unsicherheit größer als null; sie eintippen.</translation>
    </message>
    <message>
        <source>The readings and the terms of the fit differ in number; check the columns.</source>
        <translation>Zahl der Messwerte und der Terme der Anpassung ist ungleich; die Spalten prüfen.</translation>
    </message>
    <message>
        <source>A reading is not a finite number; remove or retype it.</source>
        <translation>Ein Messwert ist keine endliche Zahl; entfernen oder neu eingeben.</translation>
    </message>
    <message>
        <source>An uncertainty of a reading is zero or not finite; give its real size.</source>
        <translation>Die Unsicherheit eines Messwerts ist null oder nicht endlich; ihre wirkliche Größe angeben.</translation>
    </message>
    <message>
        <source>The positions and the readings differ in number; check the columns.</source>
        <translation>Zahl der Positionen und der Messwerte ist ungleich; die Spalten prüfen.</translation>
    </message>
    <message>
        <source>this is not a finite number; remove or retype it.</source>
        <translation>keine endliche Zahl; entfernen oder neu eingeben.</translation>
    </message>
    <message>
        <source>the uncertainty of a reading must be above zero; give its real size.</source>
        <translation>die Unsicherheit eines Messwerts muss über null liegen; ihre wirkliche Größe angeben.</translation>
    </message>
    <message>
        <source>all its positions are the same; measure at two different ones at least.</source>
        <translation>alle Positionen sind gleich; an mindestens zwei verschiedenen messen.</translation>
    </message>
    <message>
        <source>two readings always lie on a line; add a third, or give the uncertainty of each.</source>
        <translation>zwei Messwerte liegen immer auf einer Geraden; einen dritten hinzufügen oder die Unsicherheit eines jeden angeben.</translation>
    </message>
    <message>
        <source>Line {number}: {why}</source>
        <translation>Gerade {number}: {why}</translation>
    </message>
    <message>
        <source>The uncertainties and the readings differ in number; give one for each or one for all.</source>
        <translation>Zahl der Unsicherheiten und der Messwerte ist ungleich; eine für jeden oder eine für alle angeben.</translation>
    </message>
    <message>
        <source>Row {row}: {why}</source>
        <translation>Zeile {row}: {why}</translation>
    </message>
    <message>
        <source>A sample has 1 to {most} values; {n} is outside.</source>
        <translation>Eine Stichprobe hat 1 bis {most} Werte; {n} liegt außerhalb.</translation>
    </message>
    <message>
        <source>A score is missing or not a number; type 0, 1, 2, 3 or 4.</source>
        <translation>Eine Bewertung fehlt oder ist keine Zahl; 0, 1, 2, 3 oder 4 eingeben.</translation>
    </message>
    <message>
        <source>All scores are the same; nothing differs, or the judges did not look.</source>
        <translation>Alle Bewertungen sind gleich; nichts unterscheidet sich, oder die Bewerter haben nicht hingesehen.</translation>
    </message>
    <message>
        <source>A score lies between two of the scale; type 0, 1, 2, 3 or 4.</source>
        <translation>Eine Bewertung liegt zwischen zwei Werten der Skala; 0, 1, 2, 3 oder 4 eingeben.</translation>
    </message>
    <message>
        <source>A length must be a finite number of mm; leave it empty where it is not known.</source>
        <translation>Eine Länge muss eine endliche Zahl in mm sein; leer lassen, wo sie nicht bekannt ist.</translation>
    </message>
    <message>
        <source>An uncertainty of {u} mm is below zero; give 0 or more.</source>
        <translation>Eine Unsicherheit von {u} mm liegt unter null; mindestens 0 angeben.</translation>
    </message>
    <message>
        <source>{reading} mm is {off} mm from the {target} mm expected here. Read it again, or keep it.</source>
        <translation>{reading} mm liegt {off} mm neben den hier erwarteten {target} mm. Erneut messen oder beibehalten.</translation>
    </message>
    <message>
        <source>{reading} mm is {off} mm from its nominal {target} mm. Read it again, or keep it.</source>
        <translation>{reading} mm liegt {off} mm neben dem Nennmaß {target} mm. Erneut messen oder beibehalten.</translation>
    </message>
    <message>
        <source>{reading} mm for {target} mm? As inch it would be {meant} mm.</source>
        <translation>{reading} mm für {target} mm? Als Zoll wären es {meant} mm.</translation>
    </message>
    <message>
        <source>{reading} mm for {target} mm? Without the inch it would be {meant} mm.</source>
        <translation>{reading} mm für {target} mm? Ohne Zoll wären es {meant} mm.</translation>
    </message>
    <message>
        <source>{reading} mm for {target} mm? With the decimal mark moved it would be {meant} mm.</source>
        <translation>{reading} mm für {target} mm? Mit verschobenem Dezimalzeichen wären es {meant} mm.</translation>
    </message>
    <message>
        <source>{reading} mm for {target} mm? With the other sign it would be {meant} mm.</source>
        <translation>{reading} mm für {target} mm? Mit anderem Vorzeichen wären es {meant} mm.</translation>
    </message>
    <message>
        <source>{reading} mm for {target} mm? With two digits swapped it would be {meant} mm.</source>
        <translation>{reading} mm für {target} mm? Mit zwei vertauschten Ziffern wären es {meant} mm.</translation>
    </message>
    <message>
        <source>{reading} mm for {target} mm? With one digit more it could be {meant} mm.</source>
        <translation>{reading} mm für {target} mm? Mit einer Ziffer mehr könnten es {meant} mm sein.</translation>
    </message>
    <message>
        <source>{reading} mm for {target} mm? With one digit less it could be {meant} mm.</source>
        <translation>{reading} mm für {target} mm? Mit einer Ziffer weniger könnten es {meant} mm sein.</translation>
    </message>
    <message>
        <source>{reading} mm for {target} mm? With one digit changed it could be {meant} mm.</source>
        <translation>{reading} mm für {target} mm? Mit einer geänderten Ziffer könnten es {meant} mm sein.</translation>
    </message>
    <message>
        <source>This must be a number above 0; check it.</source>
        <translation>Dies muss eine Zahl größer als 0 sein; prüfen.</translation>
    </message>
    <message>
        <source>These numbers are too large or too small to calculate with; check them.</source>
        <translation>Diese Zahlen sind zu groß oder zu klein zum Rechnen; prüfen.</translation>
    </message>
    <message>
        <source>There are {count} entries of {name} and {other} of {first}; each reading has one of each.</source>
        <translation>Es gibt {count} Einträge bei {name} und {other} bei {first}; jeder Messwert hat von beiden einen.</translation>
    </message>
    <message>
        <source>{place}{value:g}{unit} is out of reach: at most {most:g}{unit}. Check the decimal mark.</source>
        <translation>{place}{value:g}{unit} liegt außer Reichweite: höchstens {most:g}{unit}. Das Dezimalzeichen prüfen.</translation>
    </message>
    <message>
        <source>Row {row}: </source>
        <translation>Zeile {row}: </translation>
    </message>
    <message>
        <source>Every score needs its step and its judge.</source>
        <translation>Jede Bewertung braucht ihre Stufe und ihren Bewerter.</translation>
    </message>
    <message>
        <source>Row {row}: type the step of this specimen.</source>
        <translation>Zeile {row}: die Stufe dieses Probestücks eingeben.</translation>
    </message>
    <message>
        <source>Score three different steps at least; two only say which is better.</source>
        <translation>Mindestens drei verschiedene Stufen bewerten; zwei sagen nur, welche besser ist.</translation>
    </message>
    <message>
        <source>One pair of eyes only: let a second person score the specimens, blind.</source>
        <translation>Nur ein Augenpaar: eine zweite Person die Probestücke blind bewerten lassen.</translation>
    </message>
    <message>
        <source>A score of {value:g} is not between 0 (useless) and 4 (without fault).</source>
        <translation>Eine Bewertung von {value:g} liegt nicht zwischen 0 (unbrauchbar) und 4 (fehlerfrei).</translation>
    </message>
    <message>
        <source>A score of {value:g} lies between two of the scale; type 0, 1, 2, 3 or 4.</source>
        <translation>Eine Bewertung von {value:g} liegt zwischen zwei Werten der Skala; 0, 1, 2, 3 oder 4 eingeben.</translation>
    </message>
    <message>
        <source>The slope of the line is not told from zero, so no position can be read off it; measure at positions further apart.</source>
        <translation>Die Steigung der Geraden ist nicht von null zu unterscheiden, daran lässt sich keine Position ablesen; an weiter auseinanderliegenden Positionen messen.</translation>
    </message>
    <message>
        <source>The uncertainty of the new reading is needed here; give it beside the reading.</source>
        <translation>Hier wird die Unsicherheit des neuen Messwerts gebraucht; neben dem Messwert angeben.</translation>
    </message>
    <message>
        <source>The positions are too uncertain for their spread to tell a slope; measure at positions further apart.</source>
        <translation>Die Positionen sind zu unsicher, als dass ihre Spreizung eine Steigung zeigte; an weiter auseinanderliegenden Positionen messen.</translation>
    </message>
    <message>
        <source>the uncertainty of a position cannot be below zero; give its real size.</source>
        <translation>die Unsicherheit einer Position kann nicht unter null liegen; ihre wirkliche Größe angeben.</translation>
    </message>
    <message>
        <source>All positions are the same; a line needs readings at two different ones at least.</source>
        <translation>Alle Positionen sind gleich; eine Gerade braucht Messwerte an mindestens zwei verschiedenen.</translation>
    </message>
    <message>
        <source>With uncertain positions the uncertainties of the readings are needed too; give both.</source>
        <translation>Bei unsicheren Positionen werden auch die Unsicherheiten der Messwerte gebraucht; beides angeben.</translation>
    </message>
    <message>
        <source>Two readings always lie on a line; add a third, or give the uncertainty of each.</source>
        <translation>Zwei Messwerte liegen immer auf einer Geraden; einen dritten hinzufügen oder die Unsicherheit jedes einzelnen angeben.</translation>
    </message>
    <message>
        <source>A share of {share:g} is not between 0 and 1; type 0.8 for 80 %.</source>
        <translation>Ein Anteil von {share:g} liegt nicht zwischen 0 und 1; 0,8 für 80 % eingeben.</translation>
    </message>
    <message>
        <source>All specimens succeed, or none: try steps where some fail and some do not.</source>
        <translation>Alle Probestücke gelingen, oder keines: Stufen versuchen, bei denen manche misslingen und manche nicht.</translation>
    </message>
    <message>
        <source>All specimens have one step; try two steps at least.</source>
        <translation>Alle Probestücke haben dieselbe Stufe; mindestens zwei Stufen versuchen.</translation>
    </message>
    <message>
        <source>ISO 2768-1 f, fine</source>
        <translation>ISO 2768-1 f, fein</translation>
    </message>
    <message>
        <source>ISO 2768-1 m, medium</source>
        <translation>ISO 2768-1 m, mittel</translation>
    </message>
    <message>
        <source>ISO 2768-1 c, coarse</source>
        <translation>ISO 2768-1 c, grob</translation>
    </message>
    <message>
        <source>ISO 2768-1 v, very coarse</source>
        <translation>ISO 2768-1 v, sehr grob</translation>
    </message>
    <message>
        <source>ISO 286-1 IT{n}, half to either side</source>
        <translation>ISO 286-1 IT{n}, ± Hälfte</translation>
    </message>
    <message>
        <source>{length} mm has no tolerance in {klass}, which goes {begin} up to {highest} mm; choose another class or state a tolerance of its own.</source>
        <translation>{length} mm hat keine Toleranz in {klass}; sie gilt {begin} bis {highest} mm. Eine andere Klasse wählen oder eine eigene Toleranz angeben.</translation>
    </message>
    <message>
        <source>from {lowest} mm</source>
        <translation>ab {lowest} mm</translation>
    </message>
    <message>
        <source>over {lowest} mm</source>
        <translation>über {lowest} mm</translation>
    </message>
    <message>
        <source>“{klass}” is not a tolerance class; use one of {classes}.</source>
        <translation>„{klass}“ ist keine Toleranzklasse; zur Wahl: {classes}.</translation>
    </message>
    <message>
        <source>The uncertainty of the value is not known; without it nothing is decided.</source>
        <translation>Die Unsicherheit des Werts ist nicht bekannt; ohne sie wird nichts entschieden.</translation>
    </message>
    <message>
        <source>The lower limit {lower} is above the upper limit {upper}; exchange them.</source>
        <translation>Die untere Grenze {lower} liegt über der oberen {upper}; tauschen.</translation>
    </message>
    <message>
        <source>With {dof:g} degrees of freedom nothing is decided; take more readings.</source>
        <translation>Mit {dof:g} Freiheitsgraden lässt sich nichts entscheiden; mehr Messwerte aufnehmen.</translation>
    </message>
    <message>
        <source>A tolerance interval needs one reading at least behind the mean.</source>
        <translation>Ein Toleranzintervall braucht mindestens einen Messwert hinter dem Mittelwert.</translation>
    </message>
    <message>
        <source>A tolerance interval needs a standard deviation from two readings at least.</source>
        <translation>Ein Toleranzintervall braucht eine Standardabweichung aus mindestens zwei Messwerten.</translation>
    </message>
    <message>
        <source>A share lies between 0 and 1; give for example 0.95.</source>
        <translation>Ein Anteil liegt zwischen 0 und 1; zum Beispiel 0,95 angeben.</translation>
    </message>
    <message>
        <source>Line {line}: this arc has no centre that fits both its ends; mend this line.</source>
        <translation>Zeile {line}: Dieser Bogen hat keine Mitte, die zu beiden Enden passt; diese Zeile berichtigen.</translation>
    </message>
    <message>
        <source>No move in this file; choose a file of G-code that prints something.</source>
        <translation>Keine Bewegung in dieser Datei; eine G-Code-Datei wählen, die etwas druckt.</translation>
    </message>
    <message>
        <source>Line {line}: a move at a speed of 0 or below (F) never ends; mend this line.</source>
        <translation>Zeile {line}: Eine Bewegung mit Geschwindigkeit 0 oder darunter (F) endet nie; diese Zeile berichtigen.</translation>
    </message>
    <message>
        <source>Line {line}: {name} is not timed here; use straight moves instead.</source>
        <translation>Zeile {line}: {name} wird hier nicht zeitlich berechnet; stattdessen gerade Bewegungen verwenden.</translation>
    </message>
    <message>
        <source>A straight of {length:g} mm cannot be; type a length.</source>
        <translation>Eine Gerade von {length:g} mm kann es nicht geben; eine Länge eingeben.</translation>
    </message>
    <message>
        <source>This must be a number above 0; type the limit that holds.</source>
        <translation>Das muss eine Zahl über 0 sein; die geltende Grenze eingeben.</translation>
    </message>
    <message>
        <source>This file is not text; choose a file of G-code.</source>
        <translation>Diese Datei ist kein Text; eine G-Code-Datei wählen.</translation>
    </message>
    <message>
        <source>Line {line}: “{text}” cannot be read; mend this line.</source>
        <translation>Zeile {line}: „{text}“ ist nicht lesbar; diese Zeile berichtigen.</translation>
    </message>
    <message>
        <source>Line {line}: {number} is larger than any word may be; mend this line.</source>
        <translation>Zeile {line}: {number} ist größer, als ein Wort sein darf; diese Zeile berichtigen.</translation>
    </message>
    <message>
        <source>Both judges score the usual run and the one at half speed, first of all.</source>
        <translation>Beide Bewerter bewerten zuallererst den üblichen Lauf und den mit halber Geschwindigkeit.</translation>
    </message>
    <message>
        <source>{value:g} {unit} is above this machine&apos;s limit of {limit:g} {unit}. Refused: nothing is tried there.</source>
        <translation>{value:g} {unit} liegt über der Grenze dieser Maschine von {limit:g} {unit}. Abgelehnt: Dort wird nichts versucht.</translation>
    </message>
    <message>
        <source>{value:g} {unit} is not between {least:g} and {most:g} {unit}; retype the step.</source>
        <translation>{value:g} {unit} liegt nicht zwischen {least:g} und {most:g} {unit}; die Stufe neu eingeben.</translation>
    </message>
    <message>
        <source>ladders.toml, {ladder}: the bound of {name} lies between 0 and 4.</source>
        <translation>ladders.toml, {ladder}: Die Schranke von {name} liegt zwischen 0 und 4.</translation>
    </message>
    <message>
        <source>Row {row}: read all widths of this line.</source>
        <translation>Zeile {row}: alle Breiten dieser Linie messen.</translation>
    </message>
    <message>
        <source>Row {row}: a line is not so wide; read it again.</source>
        <translation>Zeile {row}: So breit ist keine Linie; erneut messen.</translation>
    </message>
    <message>
        <source>This file prints nothing, so it has no layers; leave this empty.</source>
        <translation>Diese Datei druckt nichts und hat also keine Schichten; dieses Feld leer lassen.</translation>
    </message>
    <message>
        <source>This path climbs while it prints, so it has no layers to be timed; leave this empty.</source>
        <translation>Dieser Weg steigt beim Drucken und hat also keine Schichten, deren Zeit zählt; dieses Feld leer lassen.</translation>
    </message>
    <message>
        <source>A layer of {mm:g} mm of path cannot be; check the file.</source>
        <translation>Eine Schicht mit {mm:g} mm Weg kann nicht sein; die Datei prüfen.</translation>
    </message>
    <message>
        <source>A least layer time of {s:g} s is not between 0 and {most:g} s; retype it or leave it empty.</source>
        <translation>Eine Mindestschichtzeit von {s:g} s liegt nicht zwischen 0 und {most:g} s; neu eintippen oder leer lassen.</translation>
    </message>
    <message>
        <source>A layer of {mm:g} mm of path cannot be; type the length of all its lines.</source>
        <translation>Eine Schicht mit {mm:g} mm Weg kann es nicht geben; die Länge aller ihrer Linien eintippen.</translation>
    </message>
    <message>
        <source>{length:g} mm are too short to change from {start:g} to {end:g} mm/s; allow more acceleration.</source>
        <translation>{length:g} mm sind zu kurz, um von {start:g} auf {end:g} mm/s zu kommen; mehr Beschleunigung zulassen.</translation>
    </message>
    <message>
        <source>The inside angle of a corner lies between 0 and 180 degrees; retype it.</source>
        <translation>Der Innenwinkel einer Ecke liegt zwischen 0 und 180 Grad; neu eingeben.</translation>
    </message>
    <message>
        <source>{length:g} mm are too short to change from {start:g} to {end:g} mm/s; allow more jerk.</source>
        <translation>{length:g} mm sind zu kurz, um von {start:g} auf {end:g} mm/s zu kommen; mehr Ruck zulassen.</translation>
    </message>
    <message>
        <source>A speed at an end lies between 0 and the wanted speed; retype it.</source>
        <translation>Eine Geschwindigkeit am Ende liegt zwischen 0 und der gewünschten Geschwindigkeit; neu eingeben.</translation>
    </message>
    <message>
        <source>lead of the screw, {mm:g} mm</source>
        <translation>Steigung der Spindel, {mm:g} mm</translation>
    </message>
    <message>
        <source>tooth of the belt, {mm:g} mm</source>
        <translation>Zahn des Riemens, {mm:g} mm</translation>
    </message>
    <message>
        <source>turn of the pulley, {mm:g} mm</source>
        <translation>Umdrehung der Riemenscheibe, {mm:g} mm</translation>
    </message>
    <message>
        <source>full step of the motor, {mm:g} mm</source>
        <translation>Vollschritt des Motors, {mm:g} mm</translation>
    </message>
    <message>
        <source>electrical cycle of the motor, {mm:g} mm</source>
        <translation>elektrische Periode des Motors, {mm:g} mm</translation>
    </message>
    <message>
        <source>turn of a bearing of {d:g} mm, {mm:.1f} mm</source>
        <translation>Umdrehung eines Lagers von {d:g} mm, {mm:.1f} mm</translation>
    </message>
    <message>
        <source>A ripple that may be seen lies between 0 and 1 mm; 0.015 is usual.</source>
        <translation>Eine Welle, die zu sehen sein darf, liegt zwischen 0 und 1 mm; üblich ist 0,015.</translation>
    </message>
    <message>
        <source>An end of a distance is read to more than 0 and less than 1 mm; {u:g} mm cannot be, type how well.</source>
        <translation>Ein Ende einer Strecke wird auf mehr als 0 und weniger als 1 mm abgelesen; {u:g} mm kann nicht sein, eingeben wie gut.</translation>
    </message>
    <message>
        <source>A speed is known to more than 0 and less than 1 of itself; {u:g} cannot be, type how well.</source>
        <translation>Eine Geschwindigkeit ist auf mehr als 0 und weniger als 1 ihrer selbst bekannt; {u:g} kann nicht sein, eingeben wie gut.</translation>
    </message>
    <message>
        <source>No ripple yet: count crests, and measure over them.</source>
        <translation>Noch keine Welle: Wellenberge zählen und über sie messen.</translation>
    </message>
    <message>
        <source>{speed:g} mm/s is no printing speed; retype it.</source>
        <translation>{speed:g} mm/s ist keine Druckgeschwindigkeit; neu eingeben.</translation>
    </message>
    <message>
        <source>Count 1 crest at least, from crest to crest; {n} cannot be.</source>
        <translation>Mindestens 1 Wellenberg zählen, von Berg zu Berg; {n} kann nicht sein.</translation>
    </message>
    <message>
        <source>{n} crests over {mm:g} mm cannot be read on one wall; retype it.</source>
        <translation>{n} Wellenberge auf {mm:g} mm lassen sich an einer Wand nicht ablesen; neu eingeben.</translation>
    </message>
    <message>
        <source>Type the height of the first crest and of the last, or neither.</source>
        <translation>Die Höhe des ersten und des letzten Wellenbergs eingeben oder keine.</translation>
    </message>
    <message>
        <source>Ringing dies away: the last crest, {last:g} µm, must be lower than the first, {first:g} µm.</source>
        <translation>Nachschwingen klingt ab: Der letzte Wellenberg, {last:g} µm, muss niedriger sein als der erste, {first:g} µm.</translation>
    </message>
    <message>
        <source>Row {row}: a temperature is missing or not a number.</source>
        <translation>Zeile {row}: Eine Temperatur fehlt oder ist keine Zahl.</translation>
    </message>
    <message>
        <source>Row {row}: a temperature without uncertainty; type it.</source>
        <translation>Zeile {row}: eine Temperatur ohne Unsicherheit; sie eintippen.</translation>
    </message>
    <message>
        <source>Line {line} has {count} columns; keep two, time and the acceleration along this axis.</source>
        <translation>Zeile {line} hat {count} Spalten; zwei behalten: Zeit und Beschleunigung längs dieser Achse.</translation>
    </message>
    <message>
        <source>Line {line}: “{text}” is not a time and an acceleration; mend it.</source>
        <translation>Zeile {line}: „{text}“ ist nicht Zeit und Beschleunigung; berichtigen.</translation>
    </message>
    <message>
        <source>A log of {count} samples is too short; take a longer one.</source>
        <translation>Eine Aufzeichnung von {count} Abtastwerten ist zu kurz; eine längere nehmen.</translation>
    </message>
    <message>
        <source>A log needs {fewest} samples of time and acceleration at least.</source>
        <translation>Eine Aufzeichnung braucht mindestens {fewest} Abtastwerte von Zeit und Beschleunigung.</translation>
    </message>
    <message>
        <source>Sample {row}: the times do not rise; export the log again.</source>
        <translation>Abtastwert {row}: Die Zeiten steigen nicht; die Aufzeichnung neu ausgeben.</translation>
    </message>
    <message>
        <source>Sample {row}: samples are missing here; take a log without gaps.</source>
        <translation>Abtastwert {row}: Hier fehlen Abtastwerte; eine lückenlose Aufzeichnung nehmen.</translation>
    </message>
    <message>
        <source>{hz:.3g} samples in a second show no ringing. Times are read in seconds: if these are in ms or µs, change them; else sample faster, 400 Hz and more.</source>
        <translation>{hz:.3g} Abtastwerte je Sekunde zeigen kein Nachschwingen. Zeiten gelten als Sekunden: Sind es ms oder µs, umrechnen; sonst schneller abtasten, mit mindestens 400 Hz.</translation>
    </message>
    <message>
        <source>All samples are equal: the sensor did not move. Check how it is fixed.</source>
        <translation>Alle Abtastwerte sind gleich: Der Sensor hat sich nicht bewegt. Seine Befestigung prüfen.</translation>
    </message>
    <message>
        <source>The score asked for lies between 0 and 4; 3 is usual.</source>
        <translation>Die verlangte Bewertung liegt zwischen 0 und 4; üblich ist 3.</translation>
    </message>
    <message>
        <source>The time of a level is not known; choose a file, or type the usual straight.</source>
        <translation>Die Zeit einer Stufe ist nicht bekannt; eine Datei wählen oder die übliche Gerade eingeben.</translation>
    </message>
    <message>
        <source>The uncertainties rest on how far the features scatter about the line.</source>
        <translation>Die Unsicherheiten beruhen darauf, wie weit die Merkmale um die Gerade streuen.</translation>
    </message>
    <message>
        <source>Too few features to see their scatter: the uncertainties rest on the repeats alone.</source>
        <translation>Zu wenige Merkmale, um ihre Streuung zu sehen: Die Unsicherheiten beruhen nur auf den Wiederholungen.</translation>
    </message>
    <message>
        <source>Too few features to see their scatter: the uncertainties rest on the instrument&apos;s last repeatability check.</source>
        <translation>Zu wenige Merkmale, um ihre Streuung zu sehen: Die Unsicherheiten beruhen auf der letzten Prüfung der Wiederholpräzision des Messmittels.</translation>
    </message>
    <message>
        <source>Too few features to see their scatter, and no repeatability on record: cannot tell yet.</source>
        <translation>Zu wenige Merkmale, um ihre Streuung zu sehen, und keine Wiederholpräzision erfasst: lässt sich noch nicht sagen.</translation>
    </message>
    <message>
        <source>{first} They scatter less than the last digit can show, so the digit sets the uncertainty.</source>
        <translation>{first} Sie streuen weniger, als die letzte Stelle zeigen kann; die Stelle bestimmt also die Unsicherheit.</translation>
    </message>
    <message>
        <source>The readings tell the mechanisms apart.</source>
        <translation>Die Messwerte trennen die Ursachen.</translation>
    </message>
    <message>
        <source>The readings hardly tell the mechanisms apart: take lengths further apart, and inside as well as outside.</source>
        <translation>Die Messwerte trennen die Ursachen kaum: Längen weiter auseinander nehmen, und innen wie außen.</translation>
    </message>
    <message>
        <source>Enough different lengths to see a curve.</source>
        <translation>Genug verschiedene Längen, um eine Krümmung zu sehen.</translation>
    </message>
    <message>
        <source>Fewer than 3 different lengths: a curve cannot be seen.</source>
        <translation>Weniger als 3 verschiedene Längen: Eine Krümmung ist nicht zu sehen.</translation>
    </message>
    <message>
        <source>The lengths are far enough apart.</source>
        <translation>Die Längen liegen weit genug auseinander.</translation>
    </message>
    <message>
        <source>The longest length is less than 3 times the shortest: scale and constants are hardly told apart.</source>
        <translation>Die größte Länge ist weniger als dreimal die kleinste: Maßstab und Konstanten sind kaum zu trennen.</translation>
    </message>
    <message>
        <source>No curve along {axis} beyond the scatter.</source>
        <translation>Keine Krümmung längs {axis} über die Streuung hinaus.</translation>
    </message>
    <message>
        <source>The error along {axis} bends: look for a lifted corner, a bent screw, or a misread length.</source>
        <translation>Der Fehler längs {axis} krümmt sich: nach einer abgehobenen Ecke, einer krummen Spindel oder einer falsch abgelesenen Länge suchen.</translation>
    </message>
    <message>
        <source>One wall outset serves X and Y.</source>
        <translation>Ein Wandüberstand gilt für X und Y.</translation>
    </message>
    <message>
        <source>The wall outset differs between X and Y: the bead is wider in one direction. Give no common contour offset.</source>
        <translation>Der Wandüberstand ist in X und Y verschieden: Die Raupe ist in einer Richtung breiter. Keinen gemeinsamen Konturversatz geben.</translation>
    </message>
    <message>
        <source>Outside and inside are not off alike: the jaws are zeroed.</source>
        <translation>Außen und innen weichen nicht gleich ab: Die Messschenkel sind genullt.</translation>
    </message>
    <message>
        <source>Outside and inside are off alike: check the zero of both jaws, and the kind of each feature.</source>
        <translation>Außen und innen weichen gleich ab: den Nullpunkt beider Messschenkelpaare prüfen, und die Art jedes Merkmals.</translation>
    </message>
    <message>
        <source>The features scatter no more than re-reading explains.</source>
        <translation>Die Merkmale streuen nicht mehr, als Wiederholen erklärt.</translation>
    </message>
    <message>
        <source>The features differ by more than re-reading explains; the uncertainties include that.</source>
        <translation>Die Merkmale unterscheiden sich mehr, als Wiederholen erklärt; die Unsicherheiten enthalten das.</translation>
    </message>
    <message>
        <source>The scatter is alike at short and long lengths.</source>
        <translation>Die Streuung ist bei kurzen und langen Längen gleich.</translation>
    </message>
    <message>
        <source>The scatter changes with the length; read the long features again.</source>
        <translation>Die Streuung ändert sich mit der Länge; die langen Merkmale erneut messen.</translation>
    </message>
    <message>
        <source>No reading stands out.</source>
        <translation>Kein Messwert fällt auf.</translation>
    </message>
    <message>
        <source>A reading stands out; it is flagged, not dropped. Read it again, and one ordinary feature with it.</source>
        <translation>Ein Messwert fällt auf; er ist markiert, nicht verworfen. Erneut messen, und ein gewöhnliches Merkmal dazu.</translation>
    </message>
    <message>
        <source>closed window</source>
        <translation>geschlossenes Fenster</translation>
    </message>
    <message>
        <source>comb tooth</source>
        <translation>Kammzahn</translation>
    </message>
    <message>
        <source>comb notch</source>
        <translation>Kammlücke</translation>
    </message>
    <message>
        <source>gap between bodies</source>
        <translation>Abstand zwischen Körpern</translation>
    </message>
    <message>
        <source>same-facing walls</source>
        <translation>gleichgerichtete Wände</translation>
    </message>
    <message>
        <source>ring, mean of outside and inside</source>
        <translation>Ring, Mittel aus außen und innen</translation>
    </message>
    <message>
        <source>round boss</source>
        <translation>Außenzylinder</translation>
    </message>
    <message>
        <source>round bore</source>
        <translation>Bohrung</translation>
    </message>
    <message>
        <source>height</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>travel of the axis</source>
        <translation>Verfahrweg der Achse</translation>
    </message>
    <message>
        <source>outside at the first layer</source>
        <translation>außen an der ersten Schicht</translation>
    </message>
    <message>
        <source>“{text}” is not a kind of feature; use one of {kinds}.</source>
        <translation>„{text}“ ist keine Merkmalsart; zur Wahl: {kinds}.</translation>
    </message>
    <message>
        <source>“{axis}” is not an axis; use x, y or z.</source>
        <translation>„{axis}“ ist keine Achse; x, y oder z verwenden.</translation>
    </message>
    <message>
        <source>“{kind}” belongs to x and y; along z read heights (height), step tops (same_facing) or travel.</source>
        <translation>„{kind}“ gehört zu x und y; längs z Höhen (height), Stufenflächen (same_facing) oder Verfahrweg (travel) messen.</translation>
    </message>
    <message>
        <source>A height is read along z; for {axis} use outside.</source>
        <translation>Eine Höhe wird längs z gemessen; für {axis} outside verwenden.</translation>
    </message>
    <message>
        <source>A correction is read from a length above 0 mm; choose another one.</source>
        <translation>Eine Korrektur wird von einer Länge über 0 mm abgelesen; eine andere wählen.</translation>
    </message>
    <message>
        <source>Layers of {layer:g} mm leave nothing of a height; type the layer heights of the print.</source>
        <translation>Schichten von {layer:g} mm lassen von einer Höhe nichts übrig; die Schichthöhen des Drucks eingeben.</translation>
    </message>
    <message>
        <source>{value:g} mm is not a length up to {limit:g} mm; retype it.</source>
        <translation>{value:g} mm ist keine Länge bis {limit:g} mm; neu eingeben.</translation>
    </message>
    <message>
        <source>{value:g} mm: a length on a part is {limit:g} mm at least, only travel may be zero or negative; retype it.</source>
        <translation>{value:g} mm: Eine Länge am Teil ist mindestens {limit:g} mm, nur ein Verfahrweg darf null oder negativ sein; neu eingeben.</translation>
    </message>
    <message>
        <source>{value:g} °C is no temperature at which a part is read; type one from {low:g} to {high:g}.</source>
        <translation>{value:g} °C ist keine Temperatur, bei der ein Teil gemessen wird; eine von {low:g} bis {high:g} eingeben.</translation>
    </message>
    <message>
        <source>A layer of {value:g} mm cannot be, {least:g} to {most:g} mm can; type the heights of the print.</source>
        <translation>Eine Schicht von {value:g} mm kann nicht sein, {least:g} bis {most:g} mm schon; die Schichthöhen des Drucks eingeben.</translation>
    </message>
    <message>
        <source>There is no reading yet; measure one length.</source>
        <translation>Noch kein Messwert; eine Länge messen.</translation>
    </message>
    <message>
        <source>The columns differ in length; every reading needs nominal, reading, kind, axis.</source>
        <translation>Die Spalten sind ungleich lang; jeder Messwert braucht Nennmaß, Messwert, Art, Achse.</translation>
    </message>
    <message>
        <source>A value is not a number; type every length in millimetres.</source>
        <translation>Ein Wert ist keine Zahl; jede Länge in Millimetern eingeben.</translation>
    </message>
    <message>
        <source>Give one list of lengths, one for each reading.</source>
        <translation>Eine Liste von Längen angeben, eine für jeden Messwert.</translation>
    </message>
    <message>
        <source>Travel of {axis} and lengths of a part along {axis} do not belong to one trial: travel does not shrink. Keep them as two trials.</source>
        <translation>Verfahrweg von {axis} und Längen eines Teils längs {axis} gehören nicht in einen Versuch: Verfahrweg schwindet nicht. Als zwei Versuche behalten.</translation>
    </message>
    <message>
        <source>Name the feature of every reading, or of none.</source>
        <translation>Das Merkmal jedes Messwerts benennen oder keines.</translation>
    </message>
    <message>
        <source>Feature {name} has two nominal lengths, {first:g} and {second:g} mm; correct one, or give the second a name of its own.</source>
        <translation>Merkmal {name} hat zwei Nennmaße, {first:g} und {second:g} mm; eines berichtigen oder dem zweiten einen eigenen Namen geben.</translation>
    </message>
    <message>
        <source>one length of about {length:g} mm along {axis} ({kind})</source>
        <translation>eine Länge von etwa {length:g} mm längs {axis} ({kind})</translation>
    </message>
    <message>
        <source>No prediction was held against readings yet.</source>
        <translation>Noch wurde keine Vorhersage gegen Messwerte gehalten.</translation>
    </message>
    <message>
        <source>A share lies between 0 and 100 %, both left out; 99 % is usual.</source>
        <translation>Ein Anteil liegt zwischen 0 und 100 %, beide ausgenommen; üblich ist 99 %.</translation>
    </message>
    <message>
        <source>The spread of hole and peg is not known yet; measure several of each.</source>
        <translation>Die Streuung von Loch und Zapfen ist noch nicht bekannt; von beiden mehrere messen.</translation>
    </message>
    <message>
        <source>{value:g} mm is no scatter; type {low:g} to 1 mm.</source>
        <translation>{value:g} mm ist keine Streuung; {low:g} bis 1 mm eingeben.</translation>
    </message>
    <message>
        <source>Nothing is to be read; plan one reading at least.</source>
        <translation>Es ist nichts zu messen; mindestens einen Messwert planen.</translation>
    </message>
    <message>
        <source>{count} readings are too few here; {fewest} at least.</source>
        <translation>{count} Messwerte sind hier zu wenige; mindestens {fewest}.</translation>
    </message>
    <message>
        <source>{count} readings cannot be; type 0 or more.</source>
        <translation>{count} Messwerte kann es nicht geben; 0 oder mehr eingeben.</translation>
    </message>
    <message>
        <source>{value:g} cannot be; type what is above zero.</source>
        <translation>{value:g} kann nicht sein; etwas über null eingeben.</translation>
    </message>
    <message>
        <source>The trial tells none of these features yet; complete its readings first.</source>
        <translation>Der Versuch bestimmt noch keines dieser Merkmale; erst seine Messwerte vervollständigen.</translation>
    </message>
    <message>
        <source>What is to be locked holds a number that JSON does not know; check its readings.</source>
        <translation>Was festgeschrieben werden soll, enthält eine Zahl, die JSON nicht kennt; die Messwerte prüfen.</translation>
    </message>
    <message>
        <source>None of the features that were read was predicted; lock them beforehand.</source>
        <translation>Keines der gemessenen Merkmale war vorhergesagt; vorher festschreiben.</translation>
    </message>
    <message>
        <source>Only {count} parts: a spread can be shown, a tolerance cannot be promised. Measure {more} more.</source>
        <translation>Nur {count} Teile: Eine Streuung lässt sich zeigen, eine Toleranz nicht zusagen. {more} weitere messen.</translation>
    </message>
    <message>
        <source>One part does not scatter; read two parts at least.</source>
        <translation>Ein einzelnes Teil streut nicht; mindestens zwei Teile messen.</translation>
    </message>
    <message>
        <source>What is known before any print differs too widely to calculate with; check the uncertainties.</source>
        <translation>Was vor jedem Druck bekannt ist, liegt zu weit auseinander, um damit zu rechnen; die Unsicherheiten prüfen.</translation>
    </message>
    <message>
        <source>Its machine is not in the list.</source>
        <translation>Die Maschine steht nicht in der Liste.</translation>
    </message>
    <message>
        <source>Its filament lot is not in the list.</source>
        <translation>Die Filamentcharge steht nicht in der Liste.</translation>
    </message>
    <message>
        <source>Its scale error is no number above −100 %.</source>
        <translation>Der Maßstabsfehler ist keine Zahl über −100 %.</translation>
    </message>
    <message>
        <source>The uncertainty of its scale is not above zero.</source>
        <translation>Die Unsicherheit des Maßstabs liegt nicht über null.</translation>
    </message>
    <message>
        <source>What is known before any print has an uncertainty above zero; give one.</source>
        <translation>Was vor jedem Druck bekannt ist, hat eine Unsicherheit über null; eine angeben.</translation>
    </message>
    <message>
        <source>Trial {row} cannot be used: {why}</source>
        <translation>Versuch {row} ist nicht verwendbar: {why}</translation>
    </message>
    <message>
        <source>{name}: an uncertainty is below zero or not a number; mend its record.</source>
        <translation>{name}: Eine Unsicherheit liegt unter null oder ist keine Zahl; den Datensatz berichtigen.</translation>
    </message>
    <message>
        <source>measure more kinds</source>
        <translation>weitere Arten messen</translation>
    </message>
    <message>
        <source>one more feature</source>
        <translation>ein weiteres Merkmal</translation>
    </message>
    <message>
        <source>{count} more features</source>
        <translation>{count} weitere Merkmale</translation>
    </message>
    <message>
        <source>measure {more} to see how they scatter, or check the instrument&apos;s repeatability</source>
        <translation>{more} messen, um die Streuung zu sehen, oder die Wiederholpräzision des Messmittels prüfen</translation>
    </message>
    <message>
        <source>find what bends first: a lifted corner, a bent part, a misread length; no straight line fits</source>
        <translation>erst finden, was sich krümmt: eine abgehobene Ecke, ein krummes Teil, eine falsch abgelesene Länge; keine Gerade passt</translation>
    </message>
    <message>
        <source>No instrument is on record for these readings: its zero and scale are not in the uncertainties.</source>
        <translation>Für diese Messwerte ist kein Messmittel erfasst: Sein Nullpunkt und Maßstab fehlen in den Unsicherheiten.</translation>
    </message>
    <message>
        <source>The part&apos;s temperature is not recorded: 10 K above 20 °C make 100 mm of plastic about 0.07 mm longer.</source>
        <translation>Die Teiletemperatur ist nicht erfasst: 10 K über 20 °C machen 100 mm Kunststoff etwa 0,07 mm länger.</translation>
    </message>
    <message>
        <source>A reading or its nominal length is missing; leave its row out.</source>
        <translation>Ein Messwert oder sein Nennmaß fehlt; die Zeile weglassen.</translation>
    </message>
    <message>
        <source>One part shows no spread from part to part; measure a second one.</source>
        <translation>Ein einzelnes Teil zeigt keine Streuung von Teil zu Teil; ein zweites messen.</translation>
    </message>
    <message>
        <source>All errors are equal: read to one digit more, or nothing is told of scatter.</source>
        <translation>Alle Abweichungen sind gleich: auf eine Stelle mehr ablesen, sonst ist über Streuung nichts gesagt.</translation>
    </message>
    <message>
        <source>Stop: the worst part is below a quarter of its tolerance, uncertainty included.</source>
        <translation>Aufhören: Das schlechteste Teil liegt samt Unsicherheit unter einem Viertel seiner Toleranz.</translation>
    </message>
    <message>
        <source>Stop here: never correct what cannot be seen. Write it down, touch nothing.</source>
        <translation>Hier aufhören: Nie korrigieren, was nicht zu sehen ist. Aufschreiben, nichts anfassen.</translation>
    </message>
    <message>
        <source>Worth a change: the worst part is beyond its uncertainty and a tenth of its tolerance.</source>
        <translation>Eine Änderung lohnt: Das schlechteste Teil liegt jenseits seiner Unsicherheit und eines Zehntels seiner Toleranz.</translation>
    </message>
    <message>
        <source>{value:g} mm does not suit these pieces; type {low:g} to {high:g} mm.</source>
        <translation>{value:g} mm passt nicht zu diesen Stücken; {low:g} bis {high:g} mm eingeben.</translation>
    </message>
    <message>
        <source>The drive of {axis} is not on record: run-out of pulley or screw may be in these lengths.</source>
        <translation>Der Antrieb von {axis} ist nicht erfasst: In diesen Längen kann Rundlauf von Riemenscheibe oder Spindel stecken.</translation>
    </message>
    <message>
        <source>No whole turn of {axis} ({turn:g} mm) fits: run-out may be in these lengths.</source>
        <translation>Keine ganze Umdrehung von {axis} ({turn:g} mm) passt: In diesen Längen kann Rundlauf stecken.</translation>
    </message>
    <message>
        <source>at the first layer</source>
        <translation>an der ersten Schicht</translation>
    </message>
    <message>
        <source>at half height</source>
        <translation>auf halber Höhe</translation>
    </message>
    <message>
        <source>Flare block {number}</source>
        <translation>Fußwulstblock {number}</translation>
    </message>
    <message>
        <source>thickness of the wall</source>
        <translation>Dicke der Wand</translation>
    </message>
    <message>
        <source>Wall box, one bead</source>
        <translation>Wandkasten, 1 Raupe</translation>
    </message>
    <message>
        <source>Wall box, two beads</source>
        <translation>Wandkasten, 2 Raupen</translation>
    </message>
    <message>
        <source>Mass box</source>
        <translation>Massekasten</translation>
    </message>
    <message>
        <source>Pad {letter}</source>
        <translation>Feld {letter}</translation>
    </message>
    <message>
        <source>Size comb along X</source>
        <translation>Maßkamm längs X</translation>
    </message>
    <message>
        <source>Size comb along Y</source>
        <translation>Maßkamm längs Y</translation>
    </message>
    <message>
        <source>Size combs X and Y</source>
        <translation>Maßkämme X und Y</translation>
    </message>
    <message>
        <source>Half-combs along X</source>
        <translation>Halbkämme längs X</translation>
    </message>
    <message>
        <source>Half-combs along Y</source>
        <translation>Halbkämme längs Y</translation>
    </message>
    <message>
        <source>Pillar plate</source>
        <translation>Säulenplatte</translation>
    </message>
    <message>
        <source>Two rings</source>
        <translation>Zwei Ringe</translation>
    </message>
    <message>
        <source>Height stair</source>
        <translation>Höhentreppe</translation>
    </message>
    <message>
        <source>Hole and peg ladder</source>
        <translation>Loch-und-Zapfen-Leiter</translation>
    </message>
    <message>
        <source>Flare blocks</source>
        <translation>Fußwulstblöcke</translation>
    </message>
    <message>
        <source>Top pads</source>
        <translation>Deckfelder</translation>
    </message>
    <message>
        <source>There is no test piece called {key}.</source>
        <translation>Es gibt kein Prüfstück namens {key}.</translation>
    </message>
    <message>
        <source>Scale of X and Y, and their squareness, of one print; wall outset and lost motion only together.</source>
        <translation>Maßstab von X und Y und ihre Rechtwinkligkeit aus einem Druck; Wandüberstand und toter Gang nur zusammen.</translation>
    </message>
    <message>
        <source>Scale, wall outset and lost motion of X and Y, of two closed rings.</source>
        <translation>Maßstab, Wandüberstand und toter Gang von X und Y aus zwei geschlossenen Ringen.</translation>
    </message>
    <message>
        <source>Scale of Z and first-layer squash.</source>
        <translation>Maßstab von Z und Stauchung der ersten Schicht.</translation>
    </message>
    <message>
        <source>How much round holes come out too small and round pegs too large.</source>
        <translation>Wie viel runde Löcher zu klein und runde Zapfen zu groß ausfallen.</translation>
    </message>
    <message>
        <source>First-layer flare per side: half of what the low readings exceed the high ones by.</source>
        <translation>Fußwulst der ersten Schicht je Seite: die Hälfte dessen, was die unteren Messwerte über den oberen liegen.</translation>
    </message>
    <message>
        <source>Flow factor by mass: print it solid, without skirt, and weigh it against its path.</source>
        <translation>Durchflussfaktor aus der Masse: voll drucken, ohne Schürze, und gegen den Werkzeugweg wägen.</translation>
    </message>
    <message>
        <source>Flow factor by eye: print each pad with its change of the flow, and let others who do not know it judge the tops: {list}.</source>
        <translation>Durchflussfaktor nach Auge: jedes Feld mit seiner Änderung des Durchflusses drucken und die Deckflächen von anderen bewerten lassen, die sie nicht kennen: {list}.</translation>
    </message>
    <message>
        <source>Flow factor by wall: print without floor and top, and read the wall near its upper edge.</source>
        <translation>Durchflussfaktor aus der Wand: ohne Boden und Decke drucken und die Wand nahe der Oberkante messen.</translation>
    </message>
    <message>
        <source>Scale and lost motion of X and Y, and the wall outset, in one print.</source>
        <translation>Maßstab und toter Gang von X und Y und der Wandüberstand, in einem Druck.</translation>
    </message>
    <message>
        <source>Scale, wall outset and lost motion along {axis}, told apart.</source>
        <translation>Maßstab, Wandüberstand und toter Gang längs {axis}, getrennt.</translation>
    </message>
    <message>
        <source>{name} needs {needs:.0f} mm here, the machine has {has:g} mm; choose another piece.</source>
        <translation>{name} braucht hier {needs:.0f} mm, die Maschine hat {has:g} mm; ein anderes Stück wählen.</translation>
    </message>
    <message>
        <source>{most:g} mm left along {axis} are too short for a size comb; take one comb at a time, or the rings.</source>
        <translation>{most:g} mm Rest längs {axis} sind für einen Maßkamm zu kurz; nur einen Kamm auf einmal nehmen oder die Ringe.</translation>
    </message>
    <message>
        <source>Size comb {axis}</source>
        <translation>Maßkamm {axis}</translation>
    </message>
    <message>
        <source>Half-combs start at {least:g} mm between the outer teeth; here {centre:g} mm fit. Take the size comb.</source>
        <translation>Halbkämme beginnen bei {least:g} mm zwischen den äußeren Zähnen; hier passen {centre:g} mm. Den Maßkamm nehmen.</translation>
    </message>
    <message>
        <source>Half-combs {axis}</source>
        <translation>Halbkämme {axis}</translation>
    </message>
    <message>
        <source>overall length of the bar</source>
        <translation>Gesamtlänge der Leiste</translation>
    </message>
    <message>
        <source>length of the window</source>
        <translation>Länge des Fensters</translation>
    </message>
    <message>
        <source>over the outer faces</source>
        <translation>über die Außenflächen</translation>
    </message>
    <message>
        <source>between the inner faces</source>
        <translation>zwischen den Innenflächen</translation>
    </message>
    <message>
        <source>across the peg</source>
        <translation>über den Zapfen</translation>
    </message>
    <message>
        <source>across the hole</source>
        <translation>über das Loch</translation>
    </message>
    <message>
        <source>the thickest pin that goes in</source>
        <translation>dickster Stift, der hineingeht</translation>
    </message>
    <message>
        <source>{name} is neither .3mf nor .stl; choose one of the two.</source>
        <translation>{name} ist weder .3mf noch .stl; eines von beiden wählen.</translation>
    </message>
    <message>
        <source>{path} cannot be written; choose another folder, or free the disk.</source>
        <translation>{path} kann nicht geschrieben werden; einen anderen Ordner wählen oder Platz schaffen.</translation>
    </message>
    <message>
        <source>between two pillars</source>
        <translation>zwischen zwei Säulen</translation>
    </message>
    <message>
        <source>over two pillars</source>
        <translation>über zwei Säulen</translation>
    </message>
    <message>
        <source>The bed is too short for the rings; take the size comb.</source>
        <translation>Das Bett ist zu kurz für die Ringe; den Maßkamm nehmen.</translation>
    </message>
    <message>
        <source>across the ring, outside</source>
        <translation>über den Ring, außen</translation>
    </message>
    <message>
        <source>across the opening</source>
        <translation>über die Öffnung</translation>
    </message>
    <message>
        <source>Ring {number}</source>
        <translation>Ring {number}</translation>
    </message>
    <message>
        <source>from the bed side to the tread</source>
        <translation>von der Bettseite zur Stufenfläche</translation>
    </message>
    <message>
        <source>A filament of {value:g} mm cannot be; type it in mm.</source>
        <translation>Ein Filament von {value:g} mm kann nicht sein; in mm eingeben.</translation>
    </message>
    <message>
        <source>The program does not begin with its cautions.</source>
        <translation>Das Programm beginnt nicht mit seinen Warnhinweisen.</translation>
    </message>
    <message>
        <source>The {heater} is not switched off at the end.</source>
        <translation>Am Ende nicht ausgeschaltet: {heater}.</translation>
    </message>
    <message>
        <source>{name} comes before both heaters were switched off (M104 S0, M140 S0).</source>
        <translation>{name} kommt, bevor beide Heizungen ausgeschaltet sind (M104 S0, M140 S0).</translation>
    </message>
    <message>
        <source>S of M106 is 0 to 255 here, not {value:g}; controllers differ.</source>
        <translation>S von M106 ist hier 0 bis 255, nicht {value:g}; Steuerungen unterscheiden sich.</translation>
    </message>
    <message>
        <source>G92 may set E only: with another axis nobody knows any more where the bed ends.</source>
        <translation>G92 darf nur E setzen: Mit einer anderen Achse weiß niemand mehr, wo das Bett endet.</translation>
    </message>
    <message>
        <source>No temperature stands there (S).</source>
        <translation>Dort steht keine Temperatur (S).</translation>
    </message>
    <message>
        <source>{told:g} °C is beyond the limit of the {heater}, {limit:g} °C. Lower it.</source>
        <translation>{told:g} °C liegt über der Grenze {limit:g} °C ({heater}). Senken.</translation>
    </message>
    <message>
        <source>It has no speed above 0 (F).</source>
        <translation>Keine Geschwindigkeit über 0 (F).</translation>
    </message>
    <message>
        <source>{axis} moves, and neither G90 nor G91 said how numbers count.</source>
        <translation>{axis} bewegt sich, und weder G90 noch G91 sagte, wie Zahlen zählen.</translation>
    </message>
    <message>
        <source>{axis} moves before it has found its zero (G28).</source>
        <translation>{axis} bewegt sich vor der Referenzfahrt (G28).</translation>
    </message>
    <message>
        <source>{axis} moves by {by:g} mm, and nobody knows from where.</source>
        <translation>{axis} bewegt sich um {by:g} mm, und niemand weiß, von wo.</translation>
    </message>
    <message>
        <source>{axis} moves by {by:g} mm; the axis is only {length:g} mm long.</source>
        <translation>{axis} bewegt sich um {by:g} mm; die Achse ist nur {length:g} mm lang.</translation>
    </message>
    <message>
        <source>Z {place:g} mm is below the bed.</source>
        <translation>Z {place:g} mm liegt unter dem Bett.</translation>
    </message>
    <message>
        <source>{axis} {place:g} mm is outside the travel, {low:g} to {high:g} mm. Make the piece smaller.</source>
        <translation>{axis} {place:g} mm liegt außerhalb des Verfahrwegs, {low:g} bis {high:g} mm. Das Stück kleiner machen.</translation>
    </message>
    <message>
        <source>X {x:g}, Y {y:g} mm is outside the round bed. Make the piece smaller.</source>
        <translation>X {x:g}, Y {y:g} mm liegt außerhalb des runden Betts. Das Stück kleiner machen.</translation>
    </message>
    <message>
        <source>E moves, and neither M82 nor M83 said how numbers count.</source>
        <translation>E bewegt sich, und weder M82 noch M83 sagte, wie Zahlen zählen.</translation>
    </message>
    <message>
        <source>Filament moves while the nozzle is told {told:g} °C; below {least:g} °C nothing flows.</source>
        <translation>Filament bewegt sich, während die Düse auf {told:g} °C steht; unter {least:g} °C fließt nichts.</translation>
    </message>
    <message>
        <source>Filament moves before the nozzle was waited for (M109).</source>
        <translation>Filament bewegt sich, bevor auf die Düse gewartet wurde (M109).</translation>
    </message>
    <message>
        <source>The nozzle</source>
        <translation>Die Düse</translation>
    </message>
    <message>
        <source>Z</source>
        <translation>Z</translation>
    </message>
    <message>
        <source>The filament</source>
        <translation>Das Filament</translation>
    </message>
    <message>
        <source>The plastic</source>
        <translation>Der Kunststoff</translation>
    </message>
    <message>
        <source>Filament moves on the way from a place that nobody knows.</source>
        <translation>Filament bewegt sich auf dem Weg von einer Stelle, die niemand kennt.</translation>
    </message>
    <message>
        <source>{what} would run at {value:.4g} {unit}, the ceiling is {most:.4g} {unit}. Slow it down.</source>
        <translation>{what} liefe mit {value:.4g} {unit}, die Grenze ist {most:.4g} {unit}. Langsamer machen.</translation>
    </message>
    <message>
        <source>A move asks for a place that is no number; check the sizes.</source>
        <translation>Eine Bewegung verlangt einen Ort, der keine Zahl ist; die Maße prüfen.</translation>
    </message>
    <message>
        <source>box</source>
        <translation>Kasten</translation>
    </message>
    <message>
        <source>band {number}: {speed:.0f} mm/s</source>
        <translation>Band {number}: {speed:.0f} mm/s</translation>
    </message>
    <message>
        <source>line {number}: {change:+.1f} %</source>
        <translation>Linie {number}: {change:+.1f} %</translation>
    </message>
    <message>
        <source>line {number}: {lag:.3f} s</source>
        <translation>Linie {number}: {lag:.3f} s</translation>
    </message>
    <message>
        <source>{number}: {rate:.1f} mm³/s</source>
        <translation>{number}: {rate:.1f} mm³/s</translation>
    </message>
    <message>
        <source>feed of {length:g} mm</source>
        <translation>Vorschub um {length:g} mm</translation>
    </message>
    <message>
        <source>front</source>
        <translation>vorn</translation>
    </message>
    <message>
        <source>back</source>
        <translation>hinten</translation>
    </message>
    <message>
        <source>left</source>
        <translation>links</translation>
    </message>
    <message>
        <source>right</source>
        <translation>rechts</translation>
    </message>
    <message>
        <source>The fast stretch must be faster than {slow:g} mm/s.</source>
        <translation>Der schnelle Abschnitt muss schneller als {slow:g} mm/s sein.</translation>
    </message>
    <message>
        <source>The speed changes over {ramp:.1f} mm; lines of {length:g} mm are too short. Lower the fast speed, or set a higher acceleration.</source>
        <translation>Die Geschwindigkeit ändert sich über {ramp:.1f} mm; Linien von {length:g} mm sind zu kurz. Die schnelle Geschwindigkeit senken oder eine höhere Beschleunigung setzen.</translation>
    </message>
    <message>
        <source>No strand is planned; type one rate at least.</source>
        <translation>Kein Strang ist geplant; mindestens eine Rate eingeben.</translation>
    </message>
    <message>
        <source>A move asks for filament that is no number; check bead and filament.</source>
        <translation>Eine Bewegung verlangt Filament, das keine Zahl ist; Raupe und Filament prüfen.</translation>
    </message>
    <message>
        <source>A move of {value:g} mm/s cannot be: above 0, at most {most:g}. Check the speeds.</source>
        <translation>Eine Bewegung mit {value:g} mm/s kann nicht sein: über 0, höchstens {most:g}. Die Geschwindigkeiten prüfen.</translation>
    </message>
    <message>
        <source>Layers of {mm:g} mm cannot be laid; type their height.</source>
        <translation>Schichten von {mm:g} mm lassen sich nicht legen; ihre Höhe eintippen.</translation>
    </message>
    <message>
        <source>{beads} beads do not fit into a box of {side:g} mm; make it larger.</source>
        <translation>{beads} Raupen passen nicht in einen Kasten von {side:g} mm; größer machen.</translation>
    </message>
    <message>
        <source>A pad of {size:g} mm has no room for lines; make it larger.</source>
        <translation>Ein Feld von {size:g} mm hat keinen Platz für Linien; größer machen.</translation>
    </message>
    <message>
        <source>Axes start without warning: no fingers, hair or sleeves in the travel; know where the switch is.</source>
        <translation>Achsen laufen ohne Warnung an: keine Finger, Haare oder Ärmel im Verfahrbereich; wissen, wo der Schalter ist.</translation>
    </message>
    <message>
        <source>Start it yourself, watch the cold lap, never leave it unattended.</source>
        <translation>Selbst starten, die Kaltrunde beobachten, nie unbeaufsichtigt lassen.</translation>
    </message>
    <message>
        <source>Local rules come first.</source>
        <translation>Örtliche Vorschriften gehen vor.</translation>
    </message>
    <message>
        <source>Nozzle and bed burn at once; ventilate; follow the safety data sheet of the material.</source>
        <translation>Düse und Bett verbrennen sofort die Haut; lüften; Sicherheitsdatenblatt des Materials beachten.</translation>
    </message>
    <message>
        <source>Confirm first that heating stops when a sensor fails; never above the limits.</source>
        <translation>Zuerst sicherstellen, dass das Heizen bei Fühlerausfall stoppt; nie über die Grenzen.</translation>
    </message>
    <message>
        <source>The machine&apos;s text names {{{name}}}; known are {{nozzle_c}} and {{bed_c}}. Mend it.</source>
        <translation>Der Text der Maschine nennt {{{name}}}; bekannt sind {{nozzle_c}} und {{bed_c}}. Berichtigen.</translation>
    </message>
    <message>
        <source>Lines</source>
        <translation>Linien</translation>
    </message>
    <message>
        <source>Wall box</source>
        <translation>Wandkasten</translation>
    </message>
    <message>
        <source>A box of one or two beads; its walls are read on the page Wall.</source>
        <translation>Kasten aus einer oder zwei Raupen; seine Wände werden auf der Seite Wand gemessen.</translation>
    </message>
    <message>
        <source>Side</source>
        <translation>Seite</translation>
    </message>
    <message>
        <source>Height</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>Beads</source>
        <translation>Raupen</translation>
    </message>
    <message>
        <source>A box of several beads without infill; it is weighed for the page Mass.</source>
        <translation>Kasten aus mehreren Raupen ohne Füllung; er wird für die Seite Masse gewogen.</translation>
    </message>
    <message>
        <source>Nine solid pads of different flow; their tops are scored on the page Top pads.</source>
        <translation>Neun volle Felder mit verschiedenem Durchfluss; ihre Oberseiten werden auf der Seite Deckfelder bewertet.</translation>
    </message>
    <message>
        <source>Pad</source>
        <translation>Feld</translation>
    </message>
    <message>
        <source>Layers</source>
        <translation>Schichten</translation>
    </message>
    <message>
        <source>Flow ladder</source>
        <translation>Durchflussleiter</translation>
    </message>
    <message>
        <source>Lines of rising flow side by side: where they are as wide as drawn, the flow is right.</source>
        <translation>Linien mit steigendem Durchfluss nebeneinander: Wo sie so breit sind wie gezeichnet, stimmt der Durchfluss.</translation>
    </message>
    <message>
        <source>From − to +</source>
        <translation>Von − bis +</translation>
    </message>
    <message>
        <source>Lag lines</source>
        <translation>Verzugslinien</translation>
    </message>
    <message>
        <source>Lines that go slow, fast, slow, each fed ahead for another lag; the evenest one tells the pressure lag.</source>
        <translation>Linien langsam, schnell, langsam, jede für einen anderen Verzug vorgefördert; die gleichmäßigste zeigt den Druckverzug.</translation>
    </message>
    <message>
        <source>Lag up to</source>
        <translation>Verzug bis</translation>
    </message>
    <message>
        <source>Slow</source>
        <translation>Langsam</translation>
    </message>
    <message>
        <source>Fast</source>
        <translation>Schnell</translation>
    </message>
    <message>
        <source>Ringing corner</source>
        <translation>Schwingecke</translation>
    </message>
    <message>
        <source>A box of one bead, faster from band to band; the ripple after its corners tells frequency and limit.</source>
        <translation>Kasten aus einer Raupe, von Band zu Band schneller; die Welle hinter seinen Ecken zeigt Frequenz und Grenze.</translation>
    </message>
    <message>
        <source>Bands</source>
        <translation>Bänder</translation>
    </message>
    <message>
        <source>Ceiling strands</source>
        <translation>Grenzstränge</translation>
    </message>
    <message>
        <source>Strands of equal length at rising rates fall on the cold bed; they are weighed for the page Ceiling.</source>
        <translation>Gleich lange Stränge mit steigender Rate fallen auf das kalte Bett; sie werden für die Seite Grenze gewogen.</translation>
    </message>
    <message>
        <source>Filament each</source>
        <translation>Filament je Strang</translation>
    </message>
    <message>
        <source>Strands</source>
        <translation>Stränge</translation>
    </message>
    <message>
        <source>Slowest</source>
        <translation>Kleinste</translation>
    </message>
    <message>
        <source>Fastest</source>
        <translation>Größte</translation>
    </message>
    <message>
        <source>Pause between</source>
        <translation>Pause dazwischen</translation>
    </message>
    <message>
        <source>Feed move</source>
        <translation>Vorschubweg</translation>
    </message>
    <message>
        <source>One slow feed; what is left to the mark is read on the page Feed.</source>
        <translation>Ein langsamer Vorschub; der Rest bis zur Marke wird auf der Seite Vorschub abgelesen.</translation>
    </message>
    <message>
        <source>Filament</source>
        <translation>Filament</translation>
    </message>
    <message>
        <source>Feed speed</source>
        <translation>Vorschubgeschwindigkeit</translation>
    </message>
    <message>
        <source>Drawn lines</source>
        <translation>Gezogene Linien</translation>
    </message>
    <message>
        <source>A pen on the carriage draws a rectangle, all cold; its diagonals are read on the page Squareness.</source>
        <translation>Ein Stift am Schlitten zieht ein Rechteck, alles kalt; seine Diagonalen werden auf der Seite Rechtwinkligkeit gemessen.</translation>
    </message>
    <message>
        <source>Side X</source>
        <translation>Seite X</translation>
    </message>
    <message>
        <source>Side Y</source>
        <translation>Seite Y</translation>
    </message>
    <message>
        <source>Pen at Z</source>
        <translation>Stift bei Z</translation>
    </message>
    <message>
        <source>{name} is not among the words written here ({known}).</source>
        <translation>{name} gehört nicht zu den Wörtern, die hier geschrieben werden ({known}).</translation>
    </message>
    <message>
        <source>{name} takes no {letter}.</source>
        <translation>{name} nimmt kein {letter}.</translation>
    </message>
    <message>
        <source>{letter} stands there twice.</source>
        <translation>{letter} steht dort zweimal.</translation>
    </message>
    <message>
        <source>“{text}” is no letter with a number.</source>
        <translation>„{text}“ ist kein Buchstabe mit einer Zahl.</translation>
    </message>
    <message>
        <source>“{text}” is no finite number.</source>
        <translation>„{text}“ ist keine endliche Zahl.</translation>
    </message>
    <message>
        <source>A level of confidence of {level:g} is not between 0 and 1; type 0.95 for 95 %.</source>
        <translation>Ein Vertrauensniveau von {level:g} liegt nicht zwischen 0 und 1; für 95 % 0.95 eintippen.</translation>
    </message>
    <message>
        <source>A level of confidence of {level:g} tells nothing, or is not between 0 and 1; type 0.95 for 95 %.</source>
        <translation>Ein Vertrauensniveau von {level:g} sagt nichts oder liegt nicht zwischen 0 und 1; 0,95 für 95 % eingeben.</translation>
    </message>
    <message>
        <source>{dof:g} degrees of freedom give no level of confidence; read more often.</source>
        <translation>{dof:g} Freiheitsgrade ergeben kein Vertrauensniveau; öfter messen.</translation>
    </message>
    <message>
        <source>“{text}”: the unit {unit} is not known here; type mm or in.</source>
        <translation>„{text}“: Die Einheit {unit} ist hier nicht bekannt; mm oder in eingeben.</translation>
    </message>
    <message>
        <source>“{text}” is not a length; type for example 12.5, 12,5, 0.394in or 25/64in, without thousands separators.</source>
        <translation>„{text}“ ist keine Länge; zum Beispiel 12.5, 12,5, 0.394in oder 25/64in eingeben, ohne Tausendertrennzeichen.</translation>
    </message>
    <message>
        <source>“{text}”: a fraction is read in inch only; type {fraction}in, or the length in mm as a decimal.</source>
        <translation>„{text}“: Ein Bruch gilt nur in Zoll; {fraction}in eingeben oder die Länge in mm als Dezimalzahl.</translation>
    </message>
    <message>
        <source>“{text}”: the fraction has a zero below the line; type it again.</source>
        <translation>„{text}“: Der Bruch hat eine Null im Nenner; erneut eingeben.</translation>
    </message>
    <message>
        <source>“{text}” is longer than 100 m; check the decimal mark.</source>
        <translation>„{text}“ ist länger als 100 m; das Dezimalzeichen prüfen.</translation>
    </message>
    <message>
        <source>{where} is a database of another program; it was left as it is. Name another file.</source>
        <translation>{where} ist die Datenbank eines anderen Programms; sie wurde belassen, wie sie war. Eine andere Datei nennen.</translation>
    </message>
    <message>
        <source>{column} is empty; fill it in.</source>
        <translation>{column} ist leer; ausfüllen.</translation>
    </message>
    <message>
        <source>a whole number</source>
        <translation>eine ganze Zahl</translation>
    </message>
    <message>
        <source>{where}: “{value}” is not {what}; correct it.</source>
        <translation>{where}: „{value}“ ist nicht {what}; bitte berichtigen.</translation>
    </message>
    <message>
        <source>a length above zero and within reach</source>
        <translation>eine Länge über null und in Reichweite</translation>
    </message>
    <message>
        <source>a text</source>
        <translation>ein Text</translation>
    </message>
    <message>
        <source>a list as long as its neighbours</source>
        <translation>eine Liste, so lang wie die daneben</translation>
    </message>
    <message>
        <source>there, as of every kept trial</source>
        <translation>da, wie bei jedem behaltenen Versuch</translation>
    </message>
    <message>
        <source>among what it holds</source>
        <translation>unter dem, was darin steht</translation>
    </message>
    <message>
        <source>a list of sentences</source>
        <translation>eine Liste von Sätzen</translation>
    </message>
    <message>
        <source>a number</source>
        <translation>eine Zahl</translation>
    </message>
    <message>
        <source>a number above zero</source>
        <translation>eine Zahl über null</translation>
    </message>
    <message>
        <source>a list of texts</source>
        <translation>eine Liste von Texten</translation>
    </message>
    <message>
        <source>a list of parts</source>
        <translation>eine Liste von Teilen</translation>
    </message>
    <message>
        <source>a drive with its parts</source>
        <translation>ein Antrieb mit seinen Teilen</translation>
    </message>
    <message>
        <source>a group of numbers</source>
        <translation>eine Gruppe von Zahlen</translation>
    </message>
    <message>
        <source>a square of numbers</source>
        <translation>ein Quadrat von Zahlen</translation>
    </message>
    <message>
        <source>true or false</source>
        <translation>wahr oder falsch</translation>
    </message>
    <message>
        <source>a date and time such as 2026-07-01T12:00:00+00:00</source>
        <translation>Datum und Uhrzeit wie 2026-07-01T12:00:00+00:00</translation>
    </message>
    <message>
        <source>a list or group of values in JSON</source>
        <translation>eine Liste oder Gruppe von Werten in JSON</translation>
    </message>
    <message>
        <source>the content of a file in base 64</source>
        <translation>der Inhalt einer Datei in Base64</translation>
    </message>
    <message>
        <source>one of the words it may hold</source>
        <translation>eines der Wörter, die dort stehen dürfen</translation>
    </message>
    <message>
        <source>{column}: “{cell}” is not {what}; correct it.</source>
        <translation>{column}: „{cell}“ passt nicht, erwartet wird {what}; berichtigen.</translation>
    </message>
    <message>
        <source>The file is empty; its first line names the columns {names}.</source>
        <translation>Die Datei ist leer; ihre erste Zeile nennt die Spalten {names}.</translation>
    </message>
    <message>
        <source>There are more faults from here on; mend these first.</source>
        <translation>Von hier an gibt es weitere Fehler; erst diese beheben.</translation>
    </message>
    <message>
        <source>There is no row of readings below the names of the columns; add one.</source>
        <translation>Unter den Spaltennamen steht keine Zeile mit Messwerten; eine hinzufügen.</translation>
    </message>
    <message>
        <source>{file} is not there or is not a file; check its name.</source>
        <translation>{file} gibt es nicht, oder es ist keine Datei; den Namen prüfen.</translation>
    </message>
    <message>
        <source>{file} cannot be read; check that you may open it.</source>
        <translation>{file} kann nicht gelesen werden; prüfen, ob Sie die Datei öffnen dürfen.</translation>
    </message>
    <message>
        <source>There is a zero byte: this is not plain text. Save the table as text (CSV, UTF-8), then try again.</source>
        <translation>Ein Nullbyte kommt vor: Das ist kein reiner Text. Die Tabelle als Text speichern (CSV, UTF-8), dann erneut versuchen.</translation>
    </message>
    <message>
        <source>This line is not UTF-8 text; save the table as text (CSV, UTF-8), then try again.</source>
        <translation>Diese Zeile ist kein UTF-8-Text; die Tabelle als Text speichern (CSV, UTF-8), dann erneut versuchen.</translation>
    </message>
    <message>
        <source>The line is longer than {limit} characters; shorten its notes.</source>
        <translation>Die Zeile ist länger als {limit} Zeichen; ihre Notizen kürzen.</translation>
    </message>
    <message>
        <source>A quotation mark is not closed on this line, or stands inside a cell; remove it.</source>
        <translation>Ein Anführungszeichen ist in dieser Zeile nicht geschlossen oder steht in einer Zelle; entfernen.</translation>
    </message>
    <message>
        <source>The column {column} is there twice; rename or remove one.</source>
        <translation>Die Spalte {column} kommt zweimal vor; eine umbenennen oder entfernen.</translation>
    </message>
    <message>
        <source>The column {column} is missing; the first line names the columns {names}.</source>
        <translation>Die Spalte {column} fehlt; die erste Zeile nennt die Spalten {names}.</translation>
    </message>
    <message>
        <source>nominal_mm is empty; type the drawn length.</source>
        <translation>nominal_mm ist leer; die gezeichnete Länge eingeben.</translation>
    </message>
    <message>
        <source>measured_mm is empty; type the reading, or exclude the row with a reason.</source>
        <translation>measured_mm ist leer; den Messwert eingeben oder die Zeile mit Grund ausschließen.</translation>
    </message>
    <message>
        <source>column {number}</source>
        <translation>Spalte {number}</translation>
    </message>
    <message>
        <source>{column}: “{cell}” is not one of {allowed}; correct it.</source>
        <translation>{column}: „{cell}“ ist nicht erlaubt; erlaubt sind {allowed}. Berichtigen.</translation>
    </message>
    <message>
        <source>excluded: “{cell}” is neither yes nor no; type one of them.</source>
        <translation>excluded: „{cell}“ ist weder yes noch no; eines davon eingeben.</translation>
    </message>
    <message>
        <source>The reading is excluded without a reason; give one in the column reason.</source>
        <translation>Der Messwert ist ohne Grund ausgeschlossen; einen in der Spalte reason angeben.</translation>
    </message>
    <message>
        <source>{column}: “{cell}” is not a length; type a number.</source>
        <translation>{column}: „{cell}“ ist keine Länge; eine Zahl eingeben.</translation>
    </message>
    <message>
        <source>{column}: {sentence}</source>
        <translation>{column}: {sentence}</translation>
    </message>
    <message>
        <source>{found} cells instead of {wanted}; a decimal comma needs semicolons between the cells, or quotes round the number.</source>
        <translation>{found} Zellen statt {wanted}; ein Dezimalkomma braucht Semikolons zwischen den Zellen oder Anführungszeichen um die Zahl.</translation>
    </message>
    <message>
        <source>{found} cells instead of {wanted}; give every column its cell.</source>
        <translation>{found} Zellen statt {wanted}; jeder Spalte ihre Zelle geben.</translation>
    </message>
    <message>
        <source>{file} is an export of the demo shop, invented data; it is not mixed with your own.</source>
        <translation>{file} ist eine Ausgabe der Demo-Werkstatt mit erfundenen Daten; sie wird nicht mit den eigenen vermischt.</translation>
    </message>
    <message>
        <source>{where} is not the demo shop, and was left as it is; move it away first.</source>
        <translation>{where} ist nicht die Demo-Werkstatt und blieb, wie es war; erst woandershin verschieben.</translation>
    </message>
    <message>
        <source>“{where}” names no folder and no kind of file; type the whole path, such as {example}.</source>
        <translation>„{where}“ nennt keinen Ordner und keine Art von Datei; den ganzen Pfad eintippen, etwa {example}.</translation>
    </message>
    <message>
        <source>“{where}” is not a database address; type the path of a file, or an address such as {example}.</source>
        <translation>„{where}“ ist keine Datenbankadresse; den Pfad einer Datei eingeben oder eine Adresse wie {example}.</translation>
    </message>
    <message>
        <source>“{where}”: an SQLite address takes no options here; type the path alone.</source>
        <translation>„{where}“: Eine SQLite-Adresse nimmt hier keine Optionen; nur den Pfad eingeben.</translation>
    </message>
    <message>
        <source>{where} has been moved, deleted or replaced while it was open; nothing was written. Put it back, or open the right file.</source>
        <translation>{where} wurde im geöffneten Zustand verschoben, gelöscht oder ersetzt; nichts wurde geschrieben. Zurücklegen oder die richtige Datei öffnen.</translation>
    </message>
    <message>
        <source>{where}: the driver for this kind of database is not installed here; that of PostgreSQL is installed with {command}. Or type the path of a file.</source>
        <translation>{where}: Der Treiber für diese Art Datenbank ist hier nicht installiert; der für PostgreSQL wird mit {command} installiert. Oder den Pfad einer Datei eingeben.</translation>
    </message>
    <message>
        <source>{file} is there already; choose another name.</source>
        <translation>{file} gibt es schon; einen anderen Namen wählen.</translation>
    </message>
    <message>
        <source>{file} is not UTF-8 text; save it as that, then try again.</source>
        <translation>{file} ist kein UTF-8-Text; so speichern, dann erneut versuchen.</translation>
    </message>
    <message>
        <source>The file is missing; export anew.</source>
        <translation>Die Datei fehlt; neu ausgeben.</translation>
    </message>
    <message>
        <source>{file}, line {number}: a quotation mark is not closed, or stands inside a cell; correct it.</source>
        <translation>{file}, Zeile {number}: Ein Anführungszeichen ist nicht geschlossen oder steht in einer Zelle; berichtigen.</translation>
    </message>
    <message>
        <source>{file}, line {number}</source>
        <translation>{file}, Zeile {number}</translation>
    </message>
    <message>
        <source>The columns must be: {names}.</source>
        <translation>Die Spalten müssen sein: {names}.</translation>
    </message>
    <message>
        <source>{file} is not JSON from line {number} on; export anew.</source>
        <translation>{file} ist ab Zeile {number} kein JSON; neu ausgeben.</translation>
    </message>
    <message>
        <source>The table is missing; export anew.</source>
        <translation>Die Tabelle fehlt; neu ausgeben.</translation>
    </message>
    <message>
        <source>{table}, record {number}</source>
        <translation>{table}, Datensatz {number}</translation>
    </message>
    <message>
        <source>{file} is no export of this program; choose a folder that holds {about}, or a JSON file.</source>
        <translation>{file} ist kein Export dieses Programms; einen Ordner mit {about} wählen oder eine JSON-Datei.</translation>
    </message>
    <message>
        <source>{file} was exported with tables {found}; this program reads tables {known}. Open the database itself with this program, or with a newer one, and export it anew.</source>
        <translation>{file} wurde mit Tabellen {found} ausgegeben; dieses Programm liest Tabellen {known}. Die Datenbank selbst mit diesem oder einem neueren Programm öffnen und neu ausgeben.</translation>
    </message>
    <message>
        <source>{where} is damaged and was left as it is. Put a backup in its place, and keep this file for rescue.</source>
        <translation>{where} ist beschädigt und wurde belassen, wie es war. Eine Sicherungskopie an seine Stelle legen und diese Datei zur Rettung aufheben.</translation>
    </message>
    <message>
        <source>The database server at {where} does not let you write; nothing was written. Ask whoever looks after it for the right to make and change tables.</source>
        <translation>Der Datenbankserver {where} erlaubt kein Schreiben; nichts wurde geschrieben. Bei seiner Betreuung das Recht erbitten, Tabellen anzulegen und zu ändern.</translation>
    </message>
    <message>
        <source>The database server at {where} cannot be reached or refuses; check the address, the name of the database, the user and the network, then try again.</source>
        <translation>Der Datenbankserver {where} ist nicht erreichbar oder lehnt ab; Adresse, Datenbankname, Benutzer und Netz prüfen, dann erneut versuchen.</translation>
    </message>
    <message>
        <source>{where} is locked by another program; nothing was written. Close that program, then try again.</source>
        <translation>{where} ist durch ein anderes Programm gesperrt; nichts wurde geschrieben. Jenes Programm schließen, dann erneut versuchen.</translation>
    </message>
    <message>
        <source>{where} is not a database; it was left as it is. Name another file.</source>
        <translation>{where} ist keine Datenbank; die Datei wurde belassen, wie sie war. Eine andere Datei nennen.</translation>
    </message>
    <message>
        <source>{where} or its folder is write-protected; allow writing, or open a copy of the file in a folder of your own.</source>
        <translation>{where} oder der Ordner ist schreibgeschützt; Schreiben erlauben oder eine Kopie der Datei in einem eigenen Ordner öffnen.</translation>
    </message>
    <message>
        <source>{where} cannot be opened; check that its disk is there and that you may write in its folder.</source>
        <translation>{where} kann nicht geöffnet werden; prüfen, ob der Datenträger da ist und Sie in den Ordner schreiben dürfen.</translation>
    </message>
    <message>
        <source>The disk of {where} is full; nothing was written. Free some space, then try again.</source>
        <translation>Der Datenträger von {where} ist voll; nichts wurde geschrieben. Platz schaffen, dann erneut versuchen.</translation>
    </message>
    <message>
        <source>The disk of {where} cannot be read or written ({name}); nothing was written. Check the disk and its space, then try again.</source>
        <translation>Der Datenträger von {where} kann nicht gelesen oder beschrieben werden ({name}); nichts wurde geschrieben. Datenträger und freien Platz prüfen, dann erneut versuchen.</translation>
    </message>
    <message>
        <source>{where}: another seat has written the same thing at this moment; nothing was written. Open the page again, then try again.</source>
        <translation>{where}: Ein anderer Arbeitsplatz hat im selben Moment dasselbe geschrieben; nichts wurde geschrieben. Die Seite neu öffnen, dann erneut versuchen.</translation>
    </message>
    <message>
        <source>Choose the machine first; a setting is in force on one.</source>
        <translation>Zuerst die Maschine wählen; eine Einstellung gilt auf einer Maschine.</translation>
    </message>
    <message>
        <source>{name} is for another machine or lot than the trial; calculate again.</source>
        <translation>{name} gilt für eine andere Maschine oder Charge als der Versuch; neu berechnen.</translation>
    </message>
    <message>
        <source>{name} is not a finite number and cannot be set; type one.</source>
        <translation>{name} ist keine endliche Zahl und kann nicht gesetzt werden; eine eingeben.</translation>
    </message>
    <message>
        <source>{name} is set twice in one trial; choose one value.</source>
        <translation>{name} ist in einem Versuch zweimal gesetzt; einen Wert wählen.</translation>
    </message>
    <message>
        <source>Say why {name} is set; the reason stays with it.</source>
        <translation>Angeben, warum {name} gesetzt wird; der Grund bleibt dabei.</translation>
    </message>
    <message>
        <source>The {thing} {number} is not on record; choose again.</source>
        <translation>{thing} {number} ist nicht erfasst; erneut wählen.</translation>
    </message>
    <message>
        <source>Nobody wrote down what {name} was before; set the value you want by hand.</source>
        <translation>Niemand hat aufgeschrieben, was {name} vorher war; den gewünschten Wert von Hand setzen.</translation>
    </message>
    <message>
        <source>{name} was set anew elsewhere meanwhile; open the page again and look at what is in force now.</source>
        <translation>{name} wurde inzwischen anderswo neu gesetzt; die Seite neu öffnen und ansehen, was jetzt gültig ist.</translation>
    </message>
    <message>
        <source>The file {name} is empty; choose another one.</source>
        <translation>Die Datei {name} ist leer; eine andere wählen.</translation>
    </message>
    <message>
        <source>The file {name} has {size} MiB; at most {largest} MiB are kept. Make it smaller.</source>
        <translation>Die Datei {name} hat {size} MiB; aufbewahrt werden höchstens {largest} MiB. Verkleinern.</translation>
    </message>
    <message>
        <source>The attachment {number} is not on record.</source>
        <translation>Der Anhang {number} ist nicht erfasst.</translation>
    </message>
    <message>
        <source>{name} was changed elsewhere meanwhile; open it again, then repeat the change.</source>
        <translation>{name} wurde inzwischen anderswo geändert; neu öffnen, dann die Änderung wiederholen.</translation>
    </message>
    <message>
        <source>Say what happened; choose it from the list.</source>
        <translation>Angeben, was geschehen ist; aus der Liste wählen.</translation>
    </message>
    <message>
        <source>… and {more} more lines.</source>
        <translation>… und {more} weitere Zeilen.</translation>
    </message>
    <message>
        <source>{what} is there twice; correct one.</source>
        <translation>{what} kommt zweimal vor; eines berichtigen.</translation>
    </message>
    <message>
        <source>{column}: there is no {thing} {number} in this file; correct it.</source>
        <translation>{column}: {thing} {number} gibt es in dieser Datei nicht; berichtigen.</translation>
    </message>
    <message>
        <source>“{name}” is on record already with other values; those on record hold.</source>
        <translation>„{name}“ ist schon mit anderen Werten erfasst; die erfassten gelten.</translation>
    </message>
    <message>
        <source>A trial is open here for the same subject, machine and lot; keep or discard it, then import again.</source>
        <translation>Für denselben Gegenstand mit dieser Maschine und Charge ist hier ein Versuch offen; behalten oder verwerfen, dann erneut einlesen.</translation>
    </message>
    <message>
        <source>The {thing} {number} is on record already with other values; those on record hold.</source>
        <translation>{thing} {number} ist schon mit anderen Werten erfasst; die erfassten gelten.</translation>
    </message>
    <message>
        <source>Give it a name, so that it can be told from the others.</source>
        <translation>Einen Namen geben, der es von den anderen unterscheidet.</translation>
    </message>
    <message>
        <source>{field} is not a finite number; type one.</source>
        <translation>{field} ist keine endliche Zahl; eine eingeben.</translation>
    </message>
    <message>
        <source>The {thing} {name} is not on record; add it.</source>
        <translation>{thing} {name} ist nicht erfasst; hinzufügen.</translation>
    </message>
    <message>
        <source>“{name}” is on record already; choose another name.</source>
        <translation>„{name}“ ist schon erfasst; einen anderen Namen wählen.</translation>
    </message>
    <message>
        <source>This system tells no home folder; name a file for the database.</source>
        <translation>Dieses System nennt keinen Benutzerordner; eine Datei für die Datenbank nennen.</translation>
    </message>
    <message>
        <source>“{where}” cannot be the name of a file; name another one.</source>
        <translation>„{where}“ kann kein Dateiname sein; einen anderen nennen.</translation>
    </message>
    <message>
        <source>{where} is a folder or a device, not a file; name a file.</source>
        <translation>{where} ist ein Ordner oder ein Gerät, keine Datei; eine Datei nennen.</translation>
    </message>
    <message>
        <source>{where} is an empty file, perhaps what is left of a database; put a backup in its place, or delete it to begin a new database.</source>
        <translation>{where} ist eine leere Datei, vielleicht der Rest einer Datenbank; eine Sicherungskopie an ihre Stelle legen oder sie löschen, um eine neue Datenbank zu beginnen.</translation>
    </message>
    <message>
        <source>The folder {folder} does not exist; make it first, or name another file.</source>
        <translation>Den Ordner {folder} gibt es nicht; erst anlegen oder eine andere Datei nennen.</translation>
    </message>
    <message>
        <source>{where} is gone, but {log} beside it may hold its last entries; put the file back, or move the log.</source>
        <translation>{where} ist weg, aber {log} daneben enthält vielleicht die letzten Einträge; die Datei zurücklegen oder das Protokoll verschieben.</translation>
    </message>
    <message>
        <source>What was typed for {subject} while the database was away waits in {file}: {sentence}</source>
        <translation>Was für {subject} eingegeben wurde, während die Datenbank fort war, wartet in {file}: {sentence}</translation>
    </message>
    <message>
        <source>{where} lies on a network drive ({kind}), where two seats at once can damage it. Use it from one seat at a time, or move it to a database server.</source>
        <translation>{where} liegt auf einem Netzlaufwerk ({kind}), wo zwei Arbeitsplätze zugleich es beschädigen können. Immer nur von einem Arbeitsplatz aus benutzen oder auf einen Datenbankserver umziehen.</translation>
    </message>
    <message>
        <source>The clock of this computer is behind: trial {number} is of {moment}. Set the clock, or new trials will be dated before it; their order is kept all the same.</source>
        <translation>Die Uhr dieses Rechners geht nach: Versuch {number} ist von {moment}. Die Uhr stellen, sonst werden neue Versuche davor datiert; ihre Reihenfolge bleibt trotzdem.</translation>
    </message>
    <message>
        <source>{where} is this database; name another one.</source>
        <translation>{where} ist diese Datenbank; eine andere nennen.</translation>
    </message>
    <message>
        <source>There are records in {where} already; name an empty database, or import into it.</source>
        <translation>In {where} gibt es schon Datensätze; eine leere Datenbank nennen oder dorthin einlesen.</translation>
    </message>
    <message>
        <source>Not every row arrived in {where}; nothing was moved.</source>
        <translation>Nicht jede Zeile ist in {where} angekommen; nichts wurde verlegt.</translation>
    </message>
    <message>
        <source>The pages of the file do not hang together: {what}</source>
        <translation>Die Seiten der Datei hängen nicht zusammen: {what}</translation>
    </message>
    <message>
        <source>Row {number} of {table} points to a row of {other} that is not there.</source>
        <translation>Zeile {number} von {table} verweist auf eine Zeile von {other}, die es nicht gibt.</translation>
    </message>
    <message>
        <source>{where} cannot be restored: {fault}</source>
        <translation>{where} kann nicht wiederhergestellt werden: {fault}</translation>
    </message>
    <message>
        <source>Trial {other} is open here already; keep or discard it first.</source>
        <translation>Versuch {other} ist hier schon offen; erst behalten oder verwerfen.</translation>
    </message>
    <message>
        <source>Say why the trial is withdrawn; the reason stays with it.</source>
        <translation>Angeben, warum der Versuch zurückgezogen wird; der Grund bleibt dabei.</translation>
    </message>
    <message>
        <source>Trial {number} is not in use; only a kept one is withdrawn.</source>
        <translation>Versuch {number} ist nicht in Gebrauch; nur ein behaltener wird zurückgezogen.</translation>
    </message>
    <message>
        <source>Trial {number} is not on record; it was perhaps discarded.</source>
        <translation>Versuch {number} ist nicht erfasst; er wurde vielleicht verworfen.</translation>
    </message>
    <message>
        <source>Trial {number} was kept already and does not change; begin a new one.</source>
        <translation>Versuch {number} ist schon behalten und ändert sich nicht; einen neuen beginnen.</translation>
    </message>
    <message>
        <source>These readings are being typed in another window too. Close one of the two, then go on.</source>
        <translation>Diese Messwerte werden auch in einem anderen Fenster eingegeben. Eines der beiden schließen, dann weitermachen.</translation>
    </message>
    <message>
        <source>This trial was kept already and does not change; begin a new one.</source>
        <translation>Dieser Versuch ist schon behalten und ändert sich nicht; einen neuen beginnen.</translation>
    </message>
    <message>
        <source>{name} is not a number and cannot be kept; check its readings.</source>
        <translation>{name} ist keine Zahl und kann nicht behalten werden; die Messwerte prüfen.</translation>
    </message>
    <message>
        <source>{name} was estimated twice in one trial; keep it as two trials.</source>
        <translation>{name} wurde in einem Versuch zweimal geschätzt; als zwei Versuche behalten.</translation>
    </message>
    <message>
        <source>Trial {number} is not in use, yet this one relies on it; calculate again.</source>
        <translation>Versuch {number} ist nicht in Gebrauch, dieser stützt sich aber darauf; neu berechnen.</translation>
    </message>
    <message>
        <source>{where} was written by a newer version of this program (tables {found}, known here {known}); it was left as it is. Update the program, then open it again.</source>
        <translation>{where} wurde von einer neueren Version dieses Programms geschrieben (Tabellen {found}, hier bekannt {known}); es wurde belassen, wie es war. Das Programm aktualisieren, dann erneut öffnen.</translation>
    </message>
    <message>
        <source>{where} holds the tables of another program; it was left as it is. Name another database.</source>
        <translation>{where} enthält die Tabellen eines anderen Programms; es wurde belassen, wie es war. Eine andere Datenbank nennen.</translation>
    </message>
    <message>
        <source>The change of the tables of {where} would have broken links between records; nothing was changed. Keep using the earlier version of this program, and report this.</source>
        <translation>Die Änderung der Tabellen von {where} hätte Verknüpfungen zwischen Datensätzen zerstört; nichts wurde geändert. Die frühere Version dieses Programms weiter benutzen und dies melden.</translation>
    </message>
    <message>
        <source>common practice, no source</source>
        <translation>übliche Praxis, ohne Quelle</translation>
    </message>
    <message>
        <source>handbook ranges of moulding grades, from memory</source>
        <translation>Handbuchbereiche von Spritzgusssorten, aus dem Gedächtnis</translation>
    </message>
    <message>
        <source>one data sheet (ISO 294-4)</source>
        <translation>ein Datenblatt (ISO 294-4)</translation>
    </message>
    <message>
        <source>published range (ISO 294-4), seen in a public file</source>
        <translation>veröffentlichter Bereich (ISO 294-4), gesehen in einer öffentlichen Datei</translation>
    </message>
    <message>
        <source>typical value one data sheet (ISO 11359-2), range from memory</source>
        <translation>typischer Wert aus einem Datenblatt (ISO 11359-2), Bereich aus dem Gedächtnis</translation>
    </message>
    <message>
        <source>typical value one data sheet (ISO 1183-1), range from memory</source>
        <translation>typischer Wert aus einem Datenblatt (ISO 1183-1), Bereich aus dem Gedächtnis</translation>
    </message>
    <message>
        <source>{file} is larger than {limit} MB, more than can be read here; split it or choose another.</source>
        <translation>{file} ist größer als {limit} MB, mehr, als hier gelesen werden kann; aufteilen oder eine andere Datei wählen.</translation>
    </message>
    <message>
        <source>Pad mm</source>
        <translation>Feld mm</translation>
    </message>
    <message>
        <source>mean, {value}</source>
        <translation>Mittel, {value}</translation>
    </message>
    <message>
        <source>pads</source>
        <translation>Felder</translation>
    </message>
    <message>
        <source>leave it: ±0.02 mm</source>
        <translation>belassen: ±0,02 mm</translation>
    </message>
    <message>
        <source>pad, in the order of the table</source>
        <translation>Feld, in der Reihenfolge der Tabelle</translation>
    </message>
    <message>
        <source>pad less height commanded, mm</source>
        <translation>Feld minus befohlene Höhe, mm</translation>
    </message>
    <message>
        <source>Pads</source>
        <translation>Felder</translation>
    </message>
    <message>
        <source>Pads: {count}; {mean}.</source>
        <translation>Felder: {count}; {mean}.</translation>
    </message>
    <message>
        <source>steps/mm</source>
        <translation>Schritte/mm</translation>
    </message>
    <message>
        <source>turns</source>
        <translation>Umdrehungen</translation>
    </message>
    <message>
        <source>times</source>
        <translation>Mal</translation>
    </message>
    <message>
        <source>of 4</source>
        <translation>von 4</translation>
    </message>
    <message>
        <source>The flow factor {value:g}, kept last for this machine and lot, cannot be and is left out: withdraw its trial.</source>
        <translation>Der zuletzt für diese Maschine und Charge behaltene Durchflussfaktor {value:g} kann nicht sein und zählt nicht: seinen Versuch zurückziehen.</translation>
    </message>
    <message>
        <source>The flow factor in force, {value:g}, cannot be: put the right one in force on page Logbook, 1 for 100 %.</source>
        <translation>Der geltende Durchflussfaktor, {value:g}, kann nicht sein: den richtigen auf der Seite Logbuch in Kraft setzen, 1 für 100 %.</translation>
    </message>
    <message>
        <source>Let the pads cool, then read them again.</source>
        <translation>Die Felder abkühlen lassen, dann erneut messen.</translation>
    </message>
    <message>
        <source>A warm pad gives way under the gauge and reads thin.</source>
        <translation>Ein warmes Feld gibt unter dem Messmittel nach und misst sich zu dünn.</translation>
    </message>
    <message>
        <source>Read the pads again, {inside:g} mm or more inside their edges.</source>
        <translation>Die Felder erneut messen, mindestens {inside:g} mm innerhalb ihrer Ränder.</translation>
    </message>
    <message>
        <source>The rim of a pad stands proud, or is pressed flat: it does not tell the gap.</source>
        <translation>Der Rand eines Feldes steht höher oder ist flach gedrückt: Er zeigt den Spalt nicht.</translation>
    </message>
    <message>
        <source>Set the flow factor from {old:g} to {new} first, then print the pads again.</source>
        <translation>Erst den Durchflussfaktor von {old:g} auf {new} setzen, dann die Felder erneut drucken.</translation>
    </message>
    <message>
        <source>The factor in force lays {off} against the one found: a pad tells its gap only where the plastic just fills it.</source>
        <translation>Der gültige Faktor legt {off} gegen den gefundenen: Ein Feld zeigt seinen Spalt nur, wo der Kunststoff ihn gerade füllt.</translation>
    </message>
    <message>
        <source>Bed plane first: level the bed, then print the pads again.</source>
        <translation>Erst die Bettebene: das Bett ausrichten, dann die Felder erneut drucken.</translation>
    </message>
    <message>
        <source>The pads differ by {fall} from one side to the other; one offset cannot be right for both ends. {mean}</source>
        <translation>Die Felder unterscheiden sich von einer Seite zur anderen um {fall}; ein Versatz kann nicht für beide Enden richtig sein. {mean}</translation>
    </message>
    <message>
        <source>{mean} Within ±{limit:g} mm nothing is gained by a change.</source>
        <translation>{mean} Innerhalb ±{limit:g} mm bringt eine Änderung nichts.</translation>
    </message>
    <message>
        <source>{because} The interval reaches beyond: read more places to be surer.</source>
        <translation>{because} Der Vertrauensbereich reicht darüber hinaus: mehr Stellen messen, um sicherer zu sein.</translation>
    </message>
    <message>
        <source>Change the height offset from {old} to {new} ± {U} mm, which raises the nozzle by {by} mm; then print and read new pads and expect {layer:g} ± {limit:g} mm.</source>
        <translation>Den Höhenversatz von {old} auf {new} ± {U} mm ändern, das hebt die Düse um {by} mm; dann neue Felder drucken und messen und {layer:g} ± {limit:g} mm erwarten.</translation>
    </message>
    <message>
        <source>Change the height offset from {old} to {new} ± {U} mm, which lowers the nozzle by {by} mm; then print and read new pads and expect {layer:g} ± {limit:g} mm.</source>
        <translation>Den Höhenversatz von {old} auf {new} ± {U} mm ändern, das senkt die Düse um {by} mm; dann neue Felder drucken und messen und {layer:g} ± {limit:g} mm erwarten.</translation>
    </message>
    <message>
        <source>{mean} A larger offset holds the nozzle farther from the bed.</source>
        <translation>{mean} Ein größerer Versatz hält die Düse weiter vom Bett weg.</translation>
    </message>
    <message>
        <source>Keep the height offset of {old} mm and read more places.</source>
        <translation>Den Höhenversatz von {old} mm beibehalten und mehr Stellen messen.</translation>
    </message>
    <message>
        <source>{mean} More than ±{limit:g} mm, but within its uncertainty.</source>
        <translation>{mean} Mehr als ±{limit:g} mm, aber innerhalb der Messunsicherheit.</translation>
    </message>
    <message>
        <source>{count} places: {off} against the {layer:g} mm commanded.</source>
        <translation>{count} Stellen: {off} gegen die befohlenen {layer:g} mm.</translation>
    </message>
    <message>
        <source>{because} The spread between places is no more than the flatness of the bed makes.</source>
        <translation>{because} Die Streuung zwischen den Stellen ist nicht größer, als die Ebenheit des Bettes sie macht.</translation>
    </message>
    <message>
        <source>Z steps per millimetre, flow factor, height of the first layer: none of them sets the gap.</source>
        <translation>Z-Schritte/mm, Durchflussfaktor, Höhe der ersten Schicht: Keines davon stellt den Spalt ein.</translation>
    </message>
    <message>
        <source>Z steps per millimetre, height offset, height of the first layer: the flow comes first.</source>
        <translation>Z-Schritte/mm, Höhenversatz, Höhe der ersten Schicht: Der Durchfluss kommt zuerst.</translation>
    </message>
    <message>
        <source>The jaws of a caliper tilt on a thin pad: read it with a micrometer.</source>
        <translation>Die Messschenkel eines Messschiebers kippen auf einem dünnen Feld: mit einer Messschraube messen.</translation>
    </message>
    <message>
        <source>No flow result of this machine and lot is kept; it is taken to be right within 5 %. Do Wall or Mass with this lot, then read pads again.</source>
        <translation>Von dieser Maschine und Charge ist kein Ergebnis des Durchflusses behalten; er wird als auf 5 % richtig angenommen. Mit dieser Charge Wand oder Masse messen, dann erneut Felder messen.</translation>
    </message>
    <message>
        <source>Only {count} places: read five, the middle and the corners.</source>
        <translation>Nur {count} Stellen: fünf messen, die Mitte und die Ecken.</translation>
    </message>
    <message>
        <source>No flatness of this bed is kept: whether it explains the spread, page Bed plane tells.</source>
        <translation>Von diesem Bett ist keine Ebenheit behalten: Ob sie die Streuung erklärt, sagt die Seite Bettebene.</translation>
    </message>
    <message>
        <source>The places differ more than the flatness of the bed explains: look for plastic below the plate, a pressed rim, an edge that lifted.</source>
        <translation>Die Stellen unterscheiden sich mehr, als die Ebenheit des Bettes erklärt: nach Kunststoff unter der Platte, einem gedrückten Rand oder einer abgehobenen Kante sehen.</translation>
    </message>
    <message>
        <source>Whether the bed is tilted is not told: type X and Y of four places or more, not in a line.</source>
        <translation>Ob das Bett geneigt ist, sagen die Messwerte nicht: X und Y von mindestens vier Stellen eingeben, die nicht auf einer Linie liegen.</translation>
    </message>
    <message>
        <source>The pads fall by {fall}, a tilt too small to matter.</source>
        <translation>Die Felder fallen um {fall}, eine Neigung, die zu klein ist, um zu zählen.</translation>
    </message>
    <message>
        <source>The share of a machine or a lot is out of reach; check the sizes.</source>
        <translation>Der Anteil einer Maschine oder einer Charge liegt außer Reichweite; die Maße prüfen.</translation>
    </message>
    <message>
        <source>The uncertainty of a scale of {u:g} is out of reach; check it.</source>
        <translation>Die Unsicherheit {u:g} eines Maßstabs liegt außer Reichweite; sie prüfen.</translation>
    </message>
    <message>
        <source>A part cannot be off by {percent:.3g} %; check its sizes.</source>
        <translation>Ein Teil kann nicht um {percent:.3g} % abweichen; seine Maße prüfen.</translation>
    </message>
    <message>
        <source>A bore of {bore:g} mm is not between {low:g} and {high:g} mm; type that of the nozzle.</source>
        <translation>Eine Bohrung von {bore:g} mm liegt nicht zwischen {low:g} und {high:g} mm; die der Düse eingeben.</translation>
    </message>
    <message>
        <source>A first layer of {layer:g} mm is not above 0 and up to the bore of {bore:g} mm; type the height that was commanded.</source>
        <translation>Eine erste Schicht von {layer:g} mm liegt nicht über 0 und bis zur Bohrung von {bore:g} mm; die befohlene Höhe eingeben.</translation>
    </message>
    <message>
        <source>A height offset of {offset:g} mm is more than {limit:g} mm; type the one in force.</source>
        <translation>Ein Höhenversatz von {offset:g} mm ist mehr als {limit:g} mm; den gültigen eingeben.</translation>
    </message>
    <message>
        <source>The flow is not known to better than itself; type a share from 0 to 1.</source>
        <translation>Der Durchfluss ist nicht schlechter bekannt als auf sich selbst; einen Anteil von 0 bis 1 eingeben.</translation>
    </message>
    <message>
        <source>The pads are {off:.2f} mm off the height commanded: an offset is not changed by more than {limit:g} mm. Check the homing first, and that this was the first layer.</source>
        <translation>Die Felder liegen {off:.2f} mm neben der befohlenen Höhe: Ein Versatz wird nicht um mehr als {limit:g} mm geändert. Erst die Referenzfahrt prüfen, und ob dies die erste Schicht war.</translation>
    </message>
    <message>
        <source>A pad of {thickness:g} mm is none. Zero the gauge, then read it again, or leave the row empty.</source>
        <translation>Ein Feld von {thickness:g} mm gibt es nicht. Das Messmittel auf null stellen, dann erneut messen oder die Zeile leer lassen.</translation>
    </message>
    <message>
        <source>{thickness:g} mm is more than the bore of {bore:g} mm; no single layer is. Two layers, a rim, or the decimal mark? Read it again, or leave the row empty.</source>
        <translation>{thickness:g} mm sind mehr als die Bohrung von {bore:g} mm; das ist keine einzelne Schicht. Zwei Schichten, ein Rand oder das Dezimalzeichen? Erneut messen oder die Zeile leer lassen.</translation>
    </message>
    <message>
        <source>{count} of {fewest} places so far: fewer do not tell what is the gap and what is the place. Read five, one in the middle and one in each corner.</source>
        <translation>Bisher {count} von {fewest} Stellen: Weniger sagen nicht, was der Spalt ist und was die Stelle. Fünf messen, eine in der Mitte und eine in jeder Ecke.</translation>
    </message>
    <message>
        <source>Places and thicknesses differ in number; check the columns.</source>
        <translation>Stellen und Dicken sind nicht gleich viele; die Spalten prüfen.</translation>
    </message>
    <message>
        <source>{length:g} mm lies outside the checked lengths {low:g} to {high:g} mm; check a reference there.</source>
        <translation>{length:g} mm liegt außerhalb der geprüften Längen {low:g} bis {high:g} mm; dort ein Normal prüfen.</translation>
    </message>
    <message>
        <source>The parts scatter by {observed:g} {unit}, the hand alone by {hand:g} {unit}: this instrument cannot see the parts.</source>
        <translation>Die Teile streuen um {observed:g} {unit}, die Hand allein um {hand:g} {unit}: Dieses Messmittel kann die Teile nicht sehen.</translation>
    </message>
    <message>
        <source>Each level must be a number above 0; retype it.</source>
        <translation>Jede Stufe muss eine Zahl größer als 0 sein; neu eintippen.</translation>
    </message>
    <message>
        <source>Nothing is printed along this path; choose a file that prints.</source>
        <translation>Entlang dieses Wegs wird nichts gedruckt; eine Datei wählen, die druckt.</translation>
    </message>
    <message>
        <source>outer {first}-{second} {axis}</source>
        <translation>außen {first}–{second} {axis}</translation>
    </message>
    <message>
        <source>inner {first}-{second} {axis}</source>
        <translation>innen {first}–{second} {axis}</translation>
    </message>
    <message>
        <source>tooth {number} {axis}</source>
        <translation>Zahn {number} {axis}</translation>
    </message>
    <message>
        <source>overall {axis}</source>
        <translation>gesamt {axis}</translation>
    </message>
    <message>
        <source>window left {axis}</source>
        <translation>Fenster links {axis}</translation>
    </message>
    <message>
        <source>window right {axis}</source>
        <translation>Fenster rechts {axis}</translation>
    </message>
    <message>
        <source>tread {number} {axis}</source>
        <translation>Stufe {number} {axis}</translation>
    </message>
    <message>
        <source>hole {number} {axis}</source>
        <translation>Loch {number} {axis}</translation>
    </message>
    <message>
        <source>peg {number} {axis}</source>
        <translation>Zapfen {number} {axis}</translation>
    </message>
    <message>
        <source>outside {number} {axis}</source>
        <translation>außen {number} {axis}</translation>
    </message>
    <message>
        <source>inside {number} {axis}</source>
        <translation>innen {number} {axis}</translation>
    </message>
    <message>
        <source>low {number} {axis}</source>
        <translation>unten {number} {axis}</translation>
    </message>
    <message>
        <source>high {number} {axis}</source>
        <translation>oben {number} {axis}</translation>
    </message>
    <message>
        <source>front {number}</source>
        <translation>vorn {number}</translation>
    </message>
    <message>
        <source>right {number}</source>
        <translation>rechts {number}</translation>
    </message>
    <message>
        <source>back {number}</source>
        <translation>hinten {number}</translation>
    </message>
    <message>
        <source>left {number}</source>
        <translation>links {number}</translation>
    </message>
    <message>
        <source>snap force {unit}</source>
        <translation>Bruchkraft {unit}</translation>
    </message>
    <message>
        <source>A picture of {width} by {height} px cannot be drawn; choose another size.</source>
        <translation>Ein Bild von {width} mal {height} px lässt sich nicht zeichnen; eine andere Größe wählen.</translation>
    </message>
    <message>
        <source>There is nothing to be drawn; choose a piece.</source>
        <translation>Es gibt nichts zu zeichnen; ein Stück wählen.</translation>
    </message>
    <message>
        <source>the extruder feed</source>
        <translation>den Extrudervorschub</translation>
    </message>
    <message>
        <source>walls, a mass box or top pads</source>
        <translation>Wände, einen Massekasten oder Deckfelder</translation>
    </message>
    <message>
        <source>a size piece</source>
        <translation>ein Maßstück</translation>
    </message>
    <message>
        <source>the squareness</source>
        <translation>die Rechtwinkligkeit</translation>
    </message>
    <message>
        <source>a ladder of the retraction</source>
        <translation>eine Leiter für den Rückzug</translation>
    </message>
    <message>
        <source>a ladder of the pressure lag or the corner speed</source>
        <translation>eine Leiter für Druckverzug oder Eckgeschwindigkeit</translation>
    </message>
    <message>
        <source>a ladder of the cooling</source>
        <translation>eine Leiter für die Kühlung</translation>
    </message>
    <message>
        <source>first-layer pads</source>
        <translation>Felder der ersten Schicht</translation>
    </message>
    <message>
        <source>a speed trial</source>
        <translation>einen Geschwindigkeitsversuch</translation>
    </message>
    <message>
        <source>What each of them did can no longer be told.</source>
        <translation>Was jede von beiden bewirkt hat, lässt sich nicht mehr feststellen.</translation>
    </message>
    <message>
        <source>Undo the later one, print and read what the earlier one acts on, keep it, then set the later one anew.</source>
        <translation>Die spätere rückgängig machen, drucken und messen, worauf die frühere wirkt, das behalten, dann die spätere neu setzen.</translation>
    </message>
    <message>
        <source>Undo the later one, print and read {what}, keep it, then set the later one anew.</source>
        <translation>Die spätere rückgängig machen, {what} drucken und messen, das behalten, dann die spätere neu setzen.</translation>
    </message>
    <message>
        <source>printed at</source>
        <translation>gedruckt bei</translation>
    </message>
    <message>
        <source>in force when begun</source>
        <translation>bei Beginn gültig</translation>
    </message>
    <message>
        <source>nozzle {temperature:g} °C</source>
        <translation>Düse {temperature:g} °C</translation>
    </message>
    <message>
        <source>bed {temperature:g} °C</source>
        <translation>Bett {temperature:g} °C</translation>
    </message>
    <message>
        <source>Kept with the trial</source>
        <translation>Mit dem Versuch behalten</translation>
    </message>
    <message>
        <source>It rests on trials № {numbers}.</source>
        <translation>Beruht auf den Versuchen № {numbers}.</translation>
    </message>
    <message>
        <source>Withdrawn, out of use: {because}</source>
        <translation>Zurückgezogen, außer Gebrauch: {because}</translation>
    </message>
    <message>
        <source>tolerance asked for</source>
        <translation>verlangte Toleranz</translation>
    </message>
    <message>
        <source>part temperature</source>
        <translation>Teiletemperatur</translation>
    </message>
    <message>
        <source>{temperature:g} °C</source>
        <translation>{temperature:g} °C</translation>
    </message>
    <message>
        <source>“{word}” is not one of {choices}; correct it.</source>
        <translation>„{word}“ gehört nicht zu {choices}; berichtigen.</translation>
    </message>
    <message>
        <source>This is no number that can be calculated with; type it again.</source>
        <translation>Mit dieser Zahl lässt sich nicht rechnen; neu eingeben.</translation>
    </message>
    <message>
        <source>Row {row}: {says}</source>
        <translation>Zeile {row}: {says}</translation>
    </message>
    <message>
        <source>This trial was made with what is not offered here: {what}. The choice shown instead was not made.</source>
        <translation>Dieser Versuch wurde mit etwas gemacht, das hier nicht angeboten wird: {what}. Was statt dessen gewählt scheint, wurde nicht gewählt.</translation>
    </message>
    <message>
        <source>from source</source>
        <translation>aus dem Quelltext</translation>
    </message>
    <message>
        <source>The factor {value:g}, in force before, cannot be; put the right one in force on page Logbook.</source>
        <translation>Der Faktor {value:g}, der vorher galt, kann nicht sein; den richtigen auf der Seite Logbuch in Kraft setzen.</translation>
    </message>
    <message>
        <source>One specimen</source>
        <translation>Ein Probestück</translation>
    </message>
    <message>
        <source>{piece}, at {step:g} {unit}, reads {value:g} {of}, the middle one of the others {others:g} {of}: read it again, or exclude it.</source>
        <translation>{piece}, bei {step:g} {unit}, hat {value:g} {of}, der mittlere der anderen {others:g} {of}: neu messen oder ausschließen.</translation>
    </message>
    <message>
        <source>{piece}, at {step:g} {unit}, reads {value:g}, the middle one of the others {others:g}: read it again, or exclude it.</source>
        <translation>{piece}, bei {step:g} {unit}, hat {value:g}, der mittlere der anderen {others:g}: neu messen oder ausschließen.</translation>
    </message>
    <message>
        <source>no lot</source>
        <translation>ohne Charge</translation>
    </message>
    <message>
        <source>no uncertainty</source>
        <translation>ohne Unsicherheit</translation>
    </message>
    <message>
        <source>beyond 3 %</source>
        <translation>über 3 %</translation>
    </message>
    <message>
        <source>before a new belt or screw</source>
        <translation>vor einem neuen Riemen oder einer neuen Spindel</translation>
    </message>
</context>
<context>
    <name>BedForm</name>
    <message>
        <source>Caution: hot bed, moving axes, motors under power.</source>
        <translation>Vorsicht: heißes Bett, bewegte Achsen, Motoren unter Strom.</translation>
    </message>
    <message>
        <source>Places</source>
        <translation>Orte</translation>
    </message>
    <message>
        <source>Soak</source>
        <translation>Durchwärmen</translation>
    </message>
    <message>
        <source>hot</source>
        <translation>heiß</translation>
    </message>
    <message>
        <source>cold</source>
        <translation>kalt</translation>
    </message>
    <message>
        <source>lowers</source>
        <translation>senkt</translation>
    </message>
    <message>
        <source>raises</source>
        <translation>hebt</translation>
    </message>
    <message>
        <source>x y of each screw, the one that stays first: 10 10; 210 10; 110 210</source>
        <translation>x y jeder Schraube, zuerst die, die stehen bleibt: 10 10; 210 10; 110 210</translation>
    </message>
    <message>
        <source>°C</source>
        <translation>°C</translation>
    </message>
    <message>
        <source>&amp;Readings of</source>
        <translation>Messwe&amp;rte</translation>
    </message>
    <message>
        <source>Pro&amp;bes</source>
        <translation>&amp;Antastungen</translation>
    </message>
    <message>
        <source>Bed &amp;is</source>
        <translation>&amp;Bett ist</translation>
    </message>
    <message>
        <source>Be&amp;d now</source>
        <translation>Bett &amp;jetzt</translation>
    </message>
    <message>
        <source>&amp;Printing at</source>
        <translation>&amp;Druck bei</translation>
    </message>
    <message>
        <source>Scre&amp;ws x y; x y</source>
        <translation>&amp;Schrauben x y; x y</translation>
    </message>
    <message>
        <source>&amp;Thread, pitch</source>
        <translation>&amp;Gewinde, Steigung</translation>
    </message>
    <message>
        <source>Cloc&amp;kwise</source>
        <translation>&amp;Uhrzeigersinn</translation>
    </message>
    <message>
        <source>Nine more touches &amp;here</source>
        <translation>&amp;Hier neun Antastungen mehr</translation>
    </message>
    <message>
        <source>Add a row</source>
        <translation>Zeile hinzufügen</translation>
    </message>
</context>
<context>
    <name>BedPicture</name>
    <message>
        <source>Bed from above</source>
        <translation>Bett von oben</translation>
    </message>
    <message>
        <source>No map yet. Type the heights at the left, up positive; four places make a plane.</source>
        <translation>Noch keine Karte. Links die Höhen eingeben, nach oben positiv; vier Orte ergeben eine Ebene.</translation>
    </message>
    <message>
        <source>No drift yet. Heat the bed and read its middle every two minutes.</source>
        <translation>Noch keine Drift. Das Bett heizen und alle zwei Minuten seine Mitte messen.</translation>
    </message>
    <message>
        <source>Drift while soaking</source>
        <translation>Drift beim Durchwärmen</translation>
    </message>
</context>
<context>
    <name>BedPlanePage</name>
    <message>
        <source>Bed plane</source>
        <translation>Bettebene</translation>
    </message>
    <message>
        <source>Row {row}</source>
        <translation>Zeile {row}</translation>
    </message>
    <message>
        <source>Stands out from the plane of the others: probe there again.</source>
        <translation>Fällt aus der Ebene der anderen heraus: dort erneut antasten.</translation>
    </message>
</context>
<context>
    <name>BoardModel</name>
    <message>
        <source>Machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>Lot</source>
        <translation>Charge</translation>
    </message>
    <message>
        <source>To do first</source>
        <translation>Zuerst zu tun</translation>
    </message>
    <message>
        <source>Stale</source>
        <translation>Veraltet</translation>
    </message>
    <message>
        <source>In doubt</source>
        <translation>Zweifel</translation>
    </message>
    <message>
        <source>Verified</source>
        <translation>Verifiziert</translation>
    </message>
    <message>
        <source>Promise</source>
        <translation>Zusage</translation>
    </message>
    <message>
        <source>Drift</source>
        <translation>Drift</translation>
    </message>
</context>
<context>
    <name>BoardPage</name>
    <message>
        <source>Board</source>
        <translation>Tafel</translation>
    </message>
    <message>
        <source>Open its &amp;walk</source>
        <translation>Ihren &amp;Gang öffnen</translation>
    </message>
    <message>
        <source>The board has nothing to keep; Enter opens the walk of a machine.</source>
        <translation>Die Tafel hat nichts zu behalten; Enter öffnet den Gang einer Maschine.</translation>
    </message>
    <message>
        <source>Stopped. Go to another page and come back, and it is read anew.</source>
        <translation>Angehalten. Auf eine andere Seite gehen und zurückkommen, dann wird neu gelesen.</translation>
    </message>
    <message>
        <source>Machines: {every}</source>
        <translation>Maschinen: {every}</translation>
    </message>
    <message>
        <source>{seen} of {every} machines</source>
        <translation>{seen} von {every} Maschinen</translation>
    </message>
    <message>
        <source>Choose a machine in the table first.</source>
        <translation>Erst eine Maschine in der Tabelle wählen.</translation>
    </message>
    <message>
        <source>machine or lot</source>
        <translation>Maschine, Charge</translation>
    </message>
    <message>
        <source>Find a machine or lot</source>
        <translation>Maschine oder Charge suchen</translation>
    </message>
    <message>
        <source>Which machines</source>
        <translation>Welche Maschinen</translation>
    </message>
    <message>
        <source>all machines</source>
        <translation>alle Maschinen</translation>
    </message>
    <message>
        <source>want attention</source>
        <translation>zu beachten</translation>
    </message>
    <message>
        <source>with stale steps</source>
        <translation>mit veralteten Schritten</translation>
    </message>
    <message>
        <source>in doubt</source>
        <translation>zweifelhaft</translation>
    </message>
    <message>
        <source>being set up</source>
        <translation>in Einrichtung</translation>
    </message>
    <message>
        <source>verified</source>
        <translation>bestätigt</translation>
    </message>
</context>
<context>
    <name>BoardTable</name>
    <message>
        <source>All machines</source>
        <translation>Alle Maschinen</translation>
    </message>
</context>
<context>
    <name>BudgetView</name>
    <message>
        <source>Point of the budget</source>
        <translation>Punkt des Budgets</translation>
    </message>
    <message>
        <source>Component</source>
        <translation>Komponente</translation>
    </message>
    <message>
        <source>Distribution</source>
        <translation>Verteilung</translation>
    </message>
    <message>
        <source>Uncertainty budget</source>
        <translation>Messunsicherheitsbudget</translation>
    </message>
    <message>
        <source>nearest its limit</source>
        <translation>am nächsten an der Grenze</translation>
    </message>
    <message>
        <source>No reference read yet.</source>
        <translation>Noch kein Normal gemessen.</translation>
    </message>
    <message>
        <source>Student&apos;s t</source>
        <translation>Student-t</translation>
    </message>
    <message>
        <source>one rectangle dominates</source>
        <translation>eine Rechteckverteilung überwiegt</translation>
    </message>
    <message>
        <source>two rectangles make a trapezoid</source>
        <translation>zwei Rechteckverteilungen ergeben ein Trapez</translation>
    </message>
    <message>
        <source>{name}: error {error} ± {U} {unit}; u = {u} {unit}, ν = {nu}, k = {k} ({whence}).</source>
        <translation>{name}: Abweichung {error} ± {U} {unit}; u = {u} {unit}, ν = {nu}, k = {k} ({whence}).</translation>
    </message>
</context>
<context>
    <name>CeilingForm</name>
    <message>
        <source>Caution: hot plastic spits and curls. Guard your eyes, a bowl below the nozzle, ventilate, stay with it, stop at the first grinding. Never above the hot end&apos;s stated limit; local rules come first.</source>
        <translation>Vorsicht: Heißer Kunststoff spritzt und kringelt sich. Augen schützen, Schale unter die Düse, lüften, dabeibleiben, beim ersten Mahlen anhalten. Nie über die angegebene Grenze des Heizkopfs; örtliche Regeln gehen vor.</translation>
    </message>
    <message>
        <source>Nozzle
°C</source>
        <translation>Düse
°C</translation>
    </message>
    <message>
        <source>Rate
mm³/s</source>
        <translation>Rate
mm³/s</translation>
    </message>
    <message>
        <source>Mass
g</source>
        <translation>Masse
g</translation>
    </message>
    <message>
        <source>Delivered
%</source>
        <translation>Geliefert
%</translation>
    </message>
    <message>
        <source>&amp;Filament each</source>
        <translation>&amp;Filament je Strang</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>Mass per len&amp;gth</source>
        <translation>Masse je Län&amp;ge</translation>
    </message>
    <message>
        <source>g/m</source>
        <translation>g/m</translation>
    </message>
    <message>
        <source>&amp;Hot end up to</source>
        <translation>&amp;Heizkopf bis</translation>
    </message>
    <message>
        <source>°C</source>
        <translation>°C</translation>
    </message>
    <message>
        <source>No&amp;zzle</source>
        <translation>&amp;Düse</translation>
    </message>
    <message>
        <source>Bead &amp;width</source>
        <translation>Rau&amp;penbreite</translation>
    </message>
    <message>
        <source>&amp;Layer</source>
        <translation>&amp;Schicht</translation>
    </message>
    <message>
        <source>Use &amp;of it</source>
        <translation>D&amp;avon nutzen</translation>
    </message>
    <message>
        <source>Add a st&amp;rand</source>
        <translation>St&amp;rang hinzufügen</translation>
    </message>
    <message>
        <source>Another &amp;temperature</source>
        <translation>Andere &amp;Temperatur</translation>
    </message>
</context>
<context>
    <name>CeilingPage</name>
    <message>
        <source>Ceiling</source>
        <translation>Grenze</translation>
    </message>
    <message>
        <source>No strand yet. Extrude the same length at each rate, weigh it, and type the mass.</source>
        <translation>Noch kein Strang. Bei jeder Rate gleiche Länge extrudieren, wägen und die Masse eingeben.</translation>
    </message>
    <message>
        <source>Delivered share</source>
        <translation>Gelieferter Anteil</translation>
    </message>
    <message>
        <source>Choose or add the filament lot above: a ceiling belongs to machine and lot.</source>
        <translation>Oben die Filamentcharge wählen oder hinzufügen: Eine Durchflussgrenze gehört zu Maschine und Charge.</translation>
    </message>
</context>
<context>
    <name>ChartChoices</name>
    <message>
        <source>the machine&apos;s</source>
        <translation>der Maschine</translation>
    </message>
    <message>
        <source>the lot&apos;s</source>
        <translation>der Charge</translation>
    </message>
    <message>
        <source>an instrument&apos;s</source>
        <translation>eines Messmittels</translation>
    </message>
    <message>
        <source>single results</source>
        <translation>Einzelwerte</translation>
    </message>
    <message>
        <source>smoothed mean</source>
        <translation>geglätteter Mittelwert</translation>
    </message>
    <message>
        <source>by date</source>
        <translation>nach Datum</translation>
    </message>
    <message>
        <source>by filament used</source>
        <translation>nach Filament</translation>
    </message>
    <message>
        <source>&amp;Whose</source>
        <translation>&amp;Wessen</translation>
    </message>
    <message>
        <source>&amp;Quantity</source>
        <translation>&amp;Größe</translation>
    </message>
    <message>
        <source>M&amp;achine</source>
        <translation>M&amp;aschine</translation>
    </message>
    <message>
        <source>&amp;Lot</source>
        <translation>&amp;Charge</translation>
    </message>
    <message>
        <source>&amp;Instrument</source>
        <translation>Messmi&amp;ttel</translation>
    </message>
    <message>
        <source>C&amp;hart</source>
        <translation>&amp;Karte</translation>
    </message>
    <message>
        <source>every machine</source>
        <translation>alle Maschinen</translation>
    </message>
    <message>
        <source>every lot</source>
        <translation>alle Chargen</translation>
    </message>
</context>
<context>
    <name>ChartsPage</name>
    <message>
        <source>Charts</source>
        <translation>Regelkarten</translation>
    </message>
    <message>
        <source>Nothing to chart yet.</source>
        <translation>Noch nichts für eine Regelkarte.</translation>
    </message>
    <message>
        <source>What the chart says</source>
        <translation>Was die Regelkarte sagt</translation>
    </message>
    <message>
        <source>A chart has nothing to keep; trials are kept on their own pages.</source>
        <translation>Eine Regelkarte hat nichts zu behalten; Versuche werden auf ihren eigenen Seiten behalten.</translation>
    </message>
    <message>
        <source>Cannot tell yet</source>
        <translation>Lässt sich noch nicht sagen</translation>
    </message>
    <message>
        <source>No kept result of this yet: {quantity}. Keep a trial first: {page}. Eight results give trial limits, twenty firm ones.</source>
        <translation>Hierzu noch kein behaltenes Ergebnis: {quantity}. Erst einen Versuch behalten: {page}. Acht Ergebnisse ergeben vorläufige Grenzen, zwanzig feste.</translation>
    </message>
</context>
<context>
    <name>CopiesCard</name>
    <message>
        <source>Each day when the program starts, what the server holds is copied into a file on this computer. That is no substitute for a backup of the server itself: ask whoever looks after it.</source>
        <translation>Jeden Tag wird beim Start des Programms in eine Datei auf diesem Rechner kopiert, was der Server enthält. Das ersetzt keine Sicherung des Servers selbst: bei dem nachfragen, der ihn betreut.</translation>
    </message>
    <message>
        <source>No copy yet. Of the demo shop one is made only when you ask for it.</source>
        <translation>Noch keine Kopie. Von der Demo-Werkstatt entsteht eine nur auf Wunsch.</translation>
    </message>
    <message>
        <source>Copies</source>
        <translation>Sicherungskopien</translation>
    </message>
    <message>
        <source>Made</source>
        <translation>Erstellt</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Grund</translation>
    </message>
    <message>
        <source>Size</source>
        <translation>Größe</translation>
    </message>
    <message>
        <source>Copies of the database</source>
        <translation>Sicherungskopien der Datenbank</translation>
    </message>
    <message>
        <source>All that is on record gives way to this copy. A copy of it is made first.</source>
        <translation>Alles Erfasste wird durch diese Kopie ersetzt. Vorher wird davon eine Sicherungskopie erstellt.</translation>
    </message>
    <message>
        <source>&amp;Restore this copy…</source>
        <translation>&amp;Diese Kopie wiederherstellen…</translation>
    </message>
    <message>
        <source>Restore it no&amp;w</source>
        <translation>&amp;Jetzt wiederherstellen</translation>
    </message>
    <message>
        <source>Leave it</source>
        <translation>Belassen</translation>
    </message>
    <message>
        <source>asked for</source>
        <translation>auf Wunsch</translation>
    </message>
    <message>
        <source>daily</source>
        <translation>täglich</translation>
    </message>
    <message>
        <source>before an upgrade</source>
        <translation>vor einer Aktualisierung</translation>
    </message>
    <message>
        <source>before a restoration</source>
        <translation>vor einer Wiederherstellung</translation>
    </message>
    <message>
        <source>In {folder}</source>
        <translation>In {folder}</translation>
    </message>
    <message>
        <source>No copy yet. One is made each day when the program starts, and before every upgrade.</source>
        <translation>Noch keine Sicherungskopie. Täglich beim Programmstart und vor jeder Aktualisierung wird eine erstellt.</translation>
    </message>
</context>
<context>
    <name>CopyLook</name>
    <message>
        <source>Looking into it…</source>
        <translation>Sie wird durchgesehen…</translation>
    </message>
    <message>
        <source>Stopped. Choose it again to look into it.</source>
        <translation>Angehalten. Zum Durchsehen erneut wählen.</translation>
    </message>
</context>
<context>
    <name>CountField</name>
    <message>
        <source>“{text}” is not a whole number; type for example 20.</source>
        <translation>„{text}“ ist keine ganze Zahl; zum Beispiel 20 eingeben.</translation>
    </message>
    <message>
        <source>{value} is too few: at least {limit}.</source>
        <translation>{value} ist zu wenig: mindestens {limit}.</translation>
    </message>
    <message>
        <source>{value} is too many: at most {limit}.</source>
        <translation>{value} ist zu viel: höchstens {limit}.</translation>
    </message>
</context>
<context>
    <name>DatabaseCard</name>
    <message>
        <source>This database</source>
        <translation>Diese Datenbank</translation>
    </message>
    <message>
        <source>&amp;Back up now</source>
        <translation>Jetzt &amp;sichern</translation>
    </message>
    <message>
        <source>&amp;Check everything</source>
        <translation>&amp;Alles prüfen</translation>
    </message>
</context>
<context>
    <name>DecisionDesk</name>
    <message>
        <source>In force: {name}. Log and walk know it.</source>
        <translation>In Kraft: {name}. Logbuch und Gang wissen davon.</translation>
    </message>
</context>
<context>
    <name>DecisionPane</name>
    <message>
        <source>&amp;Setting</source>
        <translation>Ei&amp;nstellung</translation>
    </message>
    <message>
        <source>New &amp;value</source>
        <translation>Neuer &amp;Wert</translation>
    </message>
    <message>
        <source>Wh&amp;y</source>
        <translation>&amp;Grund</translation>
    </message>
    <message>
        <source>What is known of it</source>
        <translation>Was darüber bekannt ist</translation>
    </message>
    <message>
        <source>Choose a machine above.</source>
        <translation>Oben eine Maschine wählen.</translation>
    </message>
    <message>
        <source>&amp;Put in force</source>
        <translation>In &amp;Kraft setzen</translation>
    </message>
    <message>
        <source>Put a value in force</source>
        <translation>Einen Wert in Kraft setzen</translation>
    </message>
    <message>
        <source>One change, one prediction, one check: print and read a piece before the next change.</source>
        <translation>Eine Änderung, eine Vorhersage, eine Prüfung: vor der nächsten Änderung ein Stück drucken und messen.</translation>
    </message>
</context>
<context>
    <name>DemoBand</name>
    <message>
        <source>Demo shop</source>
        <translation>Demo-Werkstatt</translation>
    </message>
    <message>
        <source>Invented data</source>
        <translation>Erfundene Daten</translation>
    </message>
    <message>
        <source>All that you did in the demo shop is lost.</source>
        <translation>Alles, was in der Demo-Werkstatt getan wurde, geht verloren.</translation>
    </message>
    <message>
        <source>Back to my shop</source>
        <translation>Meine Werkstatt</translation>
    </message>
    <message>
        <source>Begin anew…</source>
        <translation>Neu beginnen…</translation>
    </message>
    <message>
        <source>Begin anew now</source>
        <translation>Jetzt neu beginnen</translation>
    </message>
    <message>
        <source>Leave it as it is</source>
        <translation>Belassen, wie sie ist</translation>
    </message>
    <message>
        <source>Demo shop, invented data</source>
        <translation>Demo-Werkstatt, erfundene Daten</translation>
    </message>
</context>
<context>
    <name>DemoCard</name>
    <message>
        <source>Demo shop</source>
        <translation>Demo-Werkstatt</translation>
    </message>
    <message>
        <source>This is the demo shop: all of it is invented. Your own data are elsewhere, as you left them.</source>
        <translation>Dies ist die Demo-Werkstatt: Alles darin ist erfunden. Die eigenen Daten liegen anderswo, unverändert.</translation>
    </message>
    <message>
        <source>Invented machines, filament and readings to look around in, apart from your own data.</source>
        <translation>Erfundene Maschinen, Filamente und Messwerte zum Umsehen, getrennt von den eigenen Daten.</translation>
    </message>
    <message>
        <source>Back to m&amp;y shop</source>
        <translation>Zurüc&amp;k zu meiner Werkstatt</translation>
    </message>
    <message>
        <source>Tr&amp;y the demo shop</source>
        <translation>Demo-&amp;Werkstatt ansehen</translation>
    </message>
</context>
<context>
    <name>DiameterForm</name>
    <message>
        <source>diameters</source>
        <translation>Durchmesser</translation>
    </message>
    <message>
        <source>mass</source>
        <translation>Masse</translation>
    </message>
    <message>
        <source>in water</source>
        <translation>im Wasser</translation>
    </message>
    <message>
        <source>Read&amp;ings</source>
        <translation>Messwe&amp;rte</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>N&amp;ominal</source>
        <translation>Nennm&amp;aß</translation>
    </message>
    <message>
        <source>Set no&amp;w</source>
        <translation>Einges&amp;tellt</translation>
    </message>
    <message>
        <source>Read wit&amp;h</source>
        <translation>&amp;Gemessen mit</translation>
    </message>
    <message>
        <source>&amp;Balance, 1 u</source>
        <translation>Waage, &amp;1 u</translation>
    </message>
    <message>
        <source>Len&amp;gth, 1 u</source>
        <translation>&amp;Länge, 1 u</translation>
    </message>
    <message>
        <source>Wa&amp;ter</source>
        <translation>Wa&amp;sser</translation>
    </message>
    <message>
        <source>°C</source>
        <translation>°C</translation>
    </message>
    <message>
        <source>Add a &amp;place</source>
        <translation>&amp;Stelle hinzufügen</translation>
    </message>
    <message>
        <source>Add a &amp;piece</source>
        <translation>&amp;Stück hinzufügen</translation>
    </message>
    <message>
        <source>Add a sam&amp;ple</source>
        <translation>&amp;Probe hinzufügen</translation>
    </message>
    <message>
        <source>Turn until it reads most, then by 90°; jaws are sharp.</source>
        <translation>Bis zum größten Wert drehen, dann um 90°; die Messschenkel sind scharf.</translation>
    </message>
    <message>
        <source>Straighten, cut square; cut ends fly: glasses.</source>
        <translation>Gerade richten, rechtwinklig ablängen; Enden springen weg: Schutzbrille.</translation>
    </message>
    <message>
        <source>Wet it well, no bubbles; keep water off the balance.</source>
        <translation>Gut benetzen, keine Blasen; kein Wasser auf die Waage.</translation>
    </message>
</context>
<context>
    <name>DiameterPage</name>
    <message>
        <source>Diameter</source>
        <translation>Durchmesser</translation>
    </message>
    <message>
        <source>No readings here yet. Read two diameters square to each other at ten places; weigh cut metres; weigh samples in water.</source>
        <translation>Noch keine Messwerte. An zehn Stellen zwei Durchmesser rechtwinklig zueinander messen; abgelängte Meter wägen; Proben im Wasser wägen.</translation>
    </message>
    <message>
        <source>Diameter around and along</source>
        <translation>Durchmesser am Umfang und entlang</translation>
    </message>
    <message>
        <source>Choose or add the filament lot above: a diameter belongs to a lot.</source>
        <translation>Oben die Filamentcharge wählen oder hinzufügen: Ein Durchmesser gehört zu einer Charge.</translation>
    </message>
    <message>
        <source>Out of round by {oval} mm.</source>
        <translation>Unrund um {oval} mm.</translation>
    </message>
</context>
<context>
    <name>DoubtView</name>
    <message>
        <source>Trial</source>
        <translation>Versuch</translation>
    </message>
    <message>
        <source>Subject</source>
        <translation>Gegenstand</translation>
    </message>
    <message>
        <source>Kept</source>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>Machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>Bad check</source>
        <translation>Prüfung schlecht</translation>
    </message>
    <message>
        <source>Results in doubt</source>
        <translation>Zweifelhafte Ergebnisse</translation>
    </message>
    <message>
        <source>Kept results read with it since its last good check: {count}. Nothing is deleted: read them again with another instrument, or withdraw them.</source>
        <translation>Damit seit der letzten guten Prüfung gemessene, behaltene Ergebnisse: {count}. Gelöscht wird nichts: mit einem anderen Messmittel erneut messen oder zurückziehen.</translation>
    </message>
    <message>
        <source>No kept result is in doubt because of this instrument.</source>
        <translation>Kein behaltenes Ergebnis ist wegen dieses Messmittels zweifelhaft.</translation>
    </message>
</context>
<context>
    <name>DriveCard</name>
    <message>
        <source>What the drive comes to</source>
        <translation>Was der Antrieb ergibt</translation>
    </message>
    <message>
        <source>steps/mm: not yet</source>
        <translation>Schritte/mm: noch nicht</translation>
    </message>
    <message>
        <source>To set: {steps}</source>
        <translation>Einzustellen: {steps}</translation>
    </message>
    <message>
        <source>Full step, microstep</source>
        <translation>Vollschritt, Mikroschritt</translation>
    </message>
    <message>
        <source>Turned per motor turn</source>
        <translation>Drehung je Motorumdrehung</translation>
    </message>
    <message>
        <source>Electrical cycle</source>
        <translation>Elektrischer Zyklus</translation>
    </message>
    <message>
        <source>{cycle}; whole turns are exact</source>
        <translation>{cycle}; ganze Umdrehungen sind exakt</translation>
    </message>
    <message>
        <source>With its tolerance</source>
        <translation>Mit ihrer Toleranz</translation>
    </message>
    <message>
        <source>Travel per motor turn</source>
        <translation>Weg je Motorumdrehung</translation>
    </message>
    <message>
        <source>{cycle}; tolerance {percent} % (1 u)</source>
        <translation>{cycle}; Toleranz {percent} % (1 u)</translation>
    </message>
    <message>
        <source>Clean layer heights</source>
        <translation>Glatte Schichthöhen</translation>
    </message>
    <message>
        <source>Clean test lengths</source>
        <translation>Glatte Prüflängen</translation>
    </message>
    <message>
        <source>Whole-turn lengths</source>
        <translation>Längen ganzer Umdrehungen</translation>
    </message>
    <message>
        <source>once the travel is typed</source>
        <translation>sobald der Verfahrweg eingegeben ist</translation>
    </message>
    <message>
        <source>none in this range</source>
        <translation>keine in diesem Bereich</translation>
    </message>
    <message>
        <source>{first} to {last} mm, every {step} mm</source>
        <translation>{first} bis {last} mm, alle {step} mm</translation>
    </message>
</context>
<context>
    <name>DriveChecks</name>
    <message>
        <source>Check of the drive</source>
        <translation>Prüfung des Antriebs</translation>
    </message>
    <message>
        <source>Mix-up finder</source>
        <translation>Verwechslungssucher</translation>
    </message>
    <message>
        <source>What the drive allows</source>
        <translation>Was der Antrieb zulässt</translation>
    </message>
</context>
<context>
    <name>DriveForm</name>
    <message>
        <source>toothed belt</source>
        <translation>Zahnriemen</translation>
    </message>
    <message>
        <source>screw</source>
        <translation>Spindel</translation>
    </message>
    <message>
        <source>rack and pinion</source>
        <translation>Zahnstange</translation>
    </message>
    <message>
        <source>smooth wheel</source>
        <translation>glattes Rad</translation>
    </message>
    <message>
        <source>rotary axis</source>
        <translation>Drehachse</translation>
    </message>
    <message>
        <source>&amp;Driven by</source>
        <translation>&amp;Antrieb durch</translation>
    </message>
    <message>
        <source>Module</source>
        <translation>Modul</translation>
    </message>
    <message>
        <source>mm, or</source>
        <translation>mm, oder</translation>
    </message>
    <message>
        <source>&amp;Pitch</source>
        <translation>&amp;Teilung</translation>
    </message>
    <message>
        <source>&amp;Teeth</source>
        <translation>&amp;Zähne</translation>
    </message>
    <message>
        <source>Thread star&amp;ts</source>
        <translation>&amp;Gänge</translation>
    </message>
    <message>
        <source>Helix angle</source>
        <translation>Schrägungswinkel</translation>
    </message>
    <message>
        <source>Diameter</source>
        <translation>Durchmesser</translation>
    </message>
    <message>
        <source>&amp;Full steps per turn</source>
        <translation>&amp;Vollschritte je Umdr.</translation>
    </message>
    <message>
        <source>Micr&amp;osteps</source>
        <translation>Mi&amp;kroschritte</translation>
    </message>
    <message>
        <source>&amp;Gears, driven/driving</source>
        <translation>Zahn&amp;räder, getr./treib.</translation>
    </message>
    <message>
        <source>none, 1:1</source>
        <translation>keine, 1:1</translation>
    </message>
    <message>
        <source>half the travel</source>
        <translation>halber Weg</translation>
    </message>
    <message>
        <source>twice the travel</source>
        <translation>doppelter Weg</translation>
    </message>
    <message>
        <source>&amp;Reeving</source>
        <translation>Einsc&amp;herung</translation>
    </message>
    <message>
        <source>To&amp;lerance, 1 u</source>
        <translation>To&amp;leranz, 1 u</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>usual</source>
        <translation>üblich</translation>
    </message>
    <message>
        <source>empty: common practice for this kind, no source; now {percent} %</source>
        <translation>leer: bei dieser Art üblich, ohne Quelle; jetzt {percent} %</translation>
    </message>
</context>
<context>
    <name>DrivePage</name>
    <message>
        <source>Drive</source>
        <translation>Antrieb</translation>
    </message>
    <message>
        <source>{name} saved. Its walk leads on, step by step: F9.</source>
        <translation>{name} gespeichert. Der Einrichtungsgang führt Schritt für Schritt weiter: F9.</translation>
    </message>
    <message>
        <source>{name} saved.</source>
        <translation>{name} gespeichert.</translation>
    </message>
</context>
<context>
    <name>DriveSketch</name>
    <message>
        <source>Sketch of the drive</source>
        <translation>Skizze des Antriebs</translation>
    </message>
    <message>
        <source>motor of {steps} steps × {microsteps} microsteps</source>
        <translation>Motor mit {steps} Schritten × {microsteps} Mikroschritten</translation>
    </message>
    <message>
        <source>gears {teeth}</source>
        <translation>Zahnräder {teeth}</translation>
    </message>
    <message>
        <source>{teeth} teeth</source>
        <translation>{teeth} Zähne</translation>
    </message>
    <message>
        <source>belt {pitch} mm</source>
        <translation>Riemen {pitch} mm</translation>
    </message>
    <message>
        <source>1 start</source>
        <translation>1 Gang</translation>
    </message>
    <message>
        <source>{n} starts</source>
        <translation>{n} Gänge</translation>
    </message>
    <message>
        <source>pitch {pitch} mm</source>
        <translation>Teilung {pitch} mm</translation>
    </message>
    <message>
        <source>module {size} mm</source>
        <translation>Modul {size} mm</translation>
    </message>
    <message>
        <source>pitch {size} mm</source>
        <translation>Teilung {size} mm</translation>
    </message>
    <message>
        <source>rotary axis</source>
        <translation>Drehachse</translation>
    </message>
    <message>
        <source>carriage</source>
        <translation>Schlitten</translation>
    </message>
</context>
<context>
    <name>EntryCard</name>
    <message>
        <source>Choose an entry at the left. Trials are kept on their pages; what happens is logged with F8.</source>
        <translation>Links einen Eintrag wählen. Versuche werden auf ihren Seiten behalten; was geschieht, wird mit F8 eingetragen.</translation>
    </message>
    <message>
        <source>Entry</source>
        <translation>Eintrag</translation>
    </message>
    <message>
        <source>&amp;Report</source>
        <translation>&amp;Bericht</translation>
    </message>
    <message>
        <source>Wor&amp;ds: the reason, or a note to add</source>
        <translation>Wor&amp;te: der Grund oder eine Notiz dazu</translation>
    </message>
    <message>
        <source>Add a &amp;note</source>
        <translation>&amp;Notiz hinzufügen</translation>
    </message>
    <message>
        <source>&amp;Picture…</source>
        <translation>Bi&amp;ld…</translation>
    </message>
    <message>
        <source>&amp;Withdraw it</source>
        <translation>&amp;Zurückziehen</translation>
    </message>
    <message>
        <source>Und&amp;o it</source>
        <translation>&amp;Rückgängig machen</translation>
    </message>
    <message>
        <source>&amp;Take it back</source>
        <translation>Zurückne&amp;hmen</translation>
    </message>
    <message>
        <source>Pictures; Enter shows one large</source>
        <translation>Bilder; Enter zeigt eines groß</translation>
    </message>
</context>
<context>
    <name>EventForm</name>
    <message>
        <source>What happened</source>
        <translation>Was ist geschehen</translation>
    </message>
    <message>
        <source>&amp;Take it back</source>
        <translation>Zurückne&amp;hmen</translation>
    </message>
    <message>
        <source>Open the &amp;walk</source>
        <translation>&amp;Gang öffnen</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>What happened?</source>
        <translation>Was ist geschehen?</translation>
    </message>
    <message>
        <source>One click logs it for what is picked: {names}.</source>
        <translation>Ein Klick trägt es für die Auswahl ins Logbuch ein: {names}.</translation>
    </message>
    <message>
        <source>Pick a machine, a lot or an instrument first.</source>
        <translation>Erst eine Maschine, eine Charge oder ein Messmittel wählen.</translation>
    </message>
    <message>
        <source>Logged: {event}</source>
        <translation>Eingetragen: {event}</translation>
    </message>
    <message>
        <source>Taken back; both stay in the logbook.</source>
        <translation>Zurückgenommen; beides bleibt im Logbuch.</translation>
    </message>
    <message>
        <source>Who is at work here</source>
        <translation>Wer arbeitet hier</translation>
    </message>
    <message>
        <source>your name, asked once</source>
        <translation>Ihr Name, wird einmal gefragt</translation>
    </message>
    <message>
        <source>Words to go with it</source>
        <translation>Worte dazu</translation>
    </message>
    <message>
        <source>words to go with it, if any; type them first</source>
        <translation>Worte dazu, falls nötig; zuerst eingeben</translation>
    </message>
</context>
<context>
    <name>ExchangeCard</name>
    <message>
        <source>Take out, bring in, move</source>
        <translation>Ausgeben, einlesen, umziehen</translation>
    </message>
    <message>
        <source>Export &amp;tables…</source>
        <translation>&amp;Tabellen ausgeben…</translation>
    </message>
    <message>
        <source>A folder of CSV files, for a spreadsheet</source>
        <translation>Ein Ordner mit CSV-Dateien für eine Tabellenkalkulation</translation>
    </message>
    <message>
        <source>Export &amp;one file…</source>
        <translation>Eine Datei aus&amp;geben…</translation>
    </message>
    <message>
        <source>JSON, for another program</source>
        <translation>JSON, für ein anderes Programm</translation>
    </message>
    <message>
        <source>&amp;Import…</source>
        <translation>Ein&amp;lesen…</translation>
    </message>
    <message>
        <source>Move to a &amp;new file or an empty database on a server</source>
        <translation>Umziehen in eine &amp;neue Datei oder eine leere Datenbank auf einem Server</translation>
    </message>
    <message>
        <source>Mo&amp;ve there</source>
        <translation>Dorthin &amp;umziehen</translation>
    </message>
    <message>
        <source>A move copies everything; this database stays as it is.</source>
        <translation>Ein Umzug kopiert alles; diese Datenbank bleibt, wie sie ist.</translation>
    </message>
</context>
<context>
    <name>FeedForm</name>
    <message>
        <source>Caution: the wheel starts without warning. Unloaded: nozzle taken off, path open, at most 1.5 mm/s. Under load: hot plastic; ventilate, stay with it.</source>
        <translation>Vorsicht: Das Rad läuft ohne Warnung an. Ohne Last: Düse abgenommen, Weg frei, höchstens 1,5 mm/s. Unter Last: heißer Kunststoff; lüften, dabeibleiben.</translation>
    </message>
    <message>
        <source>marks</source>
        <translation>Marken</translation>
    </message>
    <message>
        <source>mass</source>
        <translation>Masse</translation>
    </message>
    <message>
        <source>Read b&amp;y</source>
        <translation>Ver&amp;fahren</translation>
    </message>
    <message>
        <source>&amp;Steps/mm in force</source>
        <translation>Gültige &amp;Schritte/mm</translation>
    </message>
    <message>
        <source>&amp;One mark, 1 u</source>
        <translation>Eine Ma&amp;rke, 1 u</translation>
    </message>
    <message>
        <source>g/m</source>
        <translation>g/m</translation>
    </message>
    <message>
        <source>Per len&amp;gth</source>
        <translation>Je &amp;Länge</translation>
    </message>
    <message>
        <source>Balance, &amp;1 u</source>
        <translation>Waage, &amp;1 u</translation>
    </message>
    <message>
        <source>Nozzle, if &amp;hot</source>
        <translation>Düse, wenn &amp;heiß</translation>
    </message>
    <message>
        <source>°C</source>
        <translation>°C</translation>
    </message>
    <message>
        <source>Hot end u&amp;p to</source>
        <translation>Heizkopf &amp;bis</translation>
    </message>
    <message>
        <source>No&amp;zzle</source>
        <translation>&amp;Düse</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>Add a &amp;repeat</source>
        <translation>Wiederh&amp;olung hinzufügen</translation>
    </message>
    <message>
        <source>Add one under &amp;load</source>
        <translation>Eine unter L&amp;ast hinzufügen</translation>
    </message>
</context>
<context>
    <name>FeedPage</name>
    <message>
        <source>Feed</source>
        <translation>Vorschub</translation>
    </message>
    <message>
        <source>No repeat yet. Mark the filament, command 100 mm, and type what is left to the mark.</source>
        <translation>Noch keine Wiederholung. Filament markieren, 100 mm befehlen und den Rest bis zur Marke eingeben.</translation>
    </message>
    <message>
        <source>Fed less commanded</source>
        <translation>Gefördert gegenüber befohlen</translation>
    </message>
</context>
<context>
    <name>Finder</name>
    <message>
        <source>Find   Ctrl+K</source>
        <translation>Suchen   Strg+K</translation>
    </message>
    <message>
        <source>Find a page, machine, lot or instrument</source>
        <translation>Seite, Maschine, Charge oder Messmittel suchen</translation>
    </message>
    <message>
        <source>Help › {topic}</source>
        <translation>Hilfe › {topic}</translation>
    </message>
    <message>
        <source>Lengths: {choice}</source>
        <translation>Längen: {choice}</translation>
    </message>
    <message>
        <source>Language: {choice}</source>
        <translation>Sprache: {choice}</translation>
    </message>
    <message>
        <source>Demo shop: back to my shop</source>
        <translation>Demo-Werkstatt: zurück zu meiner Werkstatt</translation>
    </message>
    <message>
        <source>Demo shop: try it</source>
        <translation>Demo-Werkstatt: ansehen</translation>
    </message>
    <message>
        <source>Machine: {name}</source>
        <translation>Maschine: {name}</translation>
    </message>
    <message>
        <source>Lot: {name}</source>
        <translation>Charge: {name}</translation>
    </message>
    <message>
        <source>Instrument: {name}</source>
        <translation>Messmittel: {name}</translation>
    </message>
</context>
<context>
    <name>FirstLayerForm</name>
    <message>
        <source>Caution: hot bed and nozzle; stay with the first layer.</source>
        <translation>Vorsicht: Bett und Düse heiß; bei der ersten Schicht dabeibleiben.</translation>
    </message>
    <message>
        <source>cool</source>
        <translation>abgekühlt</translation>
    </message>
    <message>
        <source>still warm</source>
        <translation>noch warm</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>First la&amp;yer</source>
        <translation>Erste &amp;Schicht</translation>
    </message>
    <message>
        <source>Height o&amp;ffset</source>
        <translation>Höhenversat&amp;z</translation>
    </message>
    <message>
        <source>No&amp;zzle</source>
        <translation>&amp;Düse</translation>
    </message>
    <message>
        <source>Read wit&amp;h</source>
        <translation>&amp;Gemessen mit</translation>
    </message>
    <message>
        <source>Inside ed&amp;ge</source>
        <translation>Vom &amp;Rand</translation>
    </message>
    <message>
        <source>Pa&amp;ds are</source>
        <translation>Fe&amp;lder sind</translation>
    </message>
    <message>
        <source>The one in force when the pads were printed; 0 for none.</source>
        <translation>Der beim Drucken der Felder gültige; 0 für keinen.</translation>
    </message>
    <message>
        <source>How far from the edge of a pad the gauge touches it, at least.</source>
        <translation>Wie weit vom Rand eines Feldes das Messmittel es mindestens berührt.</translation>
    </message>
    <message>
        <source>Add a pla&amp;ce</source>
        <translation>Stelle hinzuf&amp;ügen</translation>
    </message>
    <message>
        <source>A larger height offset holds the nozzle farther from the bed.</source>
        <translation>Ein größerer Höhenversatz hält die Düse weiter vom Bett weg.</translation>
    </message>
</context>
<context>
    <name>FirstLayerPage</name>
    <message>
        <source>First layer</source>
        <translation>Erste Schicht</translation>
    </message>
    <message>
        <source>No pad yet. Print pads of one layer, let them cool, and read their thickness.</source>
        <translation>Noch kein Feld. Felder aus einer Schicht drucken, abkühlen lassen und ihre Dicke messen.</translation>
    </message>
    <message>
        <source>Pads</source>
        <translation>Felder</translation>
    </message>
    <message>
        <source>Stands out from the other places: read it again.</source>
        <translation>Weicht von den anderen Stellen ab: erneut messen.</translation>
    </message>
</context>
<context>
    <name>FirstStart</name>
    <message>
        <source>&amp;Add a machine</source>
        <translation>Maschine hin&amp;zufügen</translation>
    </message>
    <message>
        <source>&amp;Try the demo shop</source>
        <translation>&amp;Demo-Werkstatt ansehen</translation>
    </message>
    <message>
        <source>&amp;First steps</source>
        <translation>Erste &amp;Schritte</translation>
    </message>
    <message>
        <source>Help and &amp;keys   F1</source>
        <translation>Hilfe und &amp;Tasten   F1</translation>
    </message>
    <message>
        <source>Begin here</source>
        <translation>Hier beginnen</translation>
    </message>
    <message>
        <source>Slipgauge takes what you measure on printed parts and on the machine, tells an error that grows with the length from one that does not, and says which setting or part to change, or which reading is still missing.</source>
        <translation>Slipgauge nimmt auf, was an gedruckten Teilen und an der Maschine gemessen wird, trennt einen Fehler, der mit der Länge wächst, von einem, der gleich bleibt, und sagt, welche Einstellung oder welches Teil zu ändern ist oder welcher Messwert noch fehlt.</translation>
    </message>
    <message>
        <source>Write down its belts, pulleys and screws; the setup walk leads step by step.</source>
        <translation>Riemen, Riemenscheiben und Spindeln aufschreiben; der Einrichtungsgang führt Schritt für Schritt.</translation>
    </message>
    <message>
        <source>Look around first: invented machines, filament and readings, kept apart from your own.</source>
        <translation>Sich erst umsehen: erfundene Maschinen, Filamente und Messwerte, getrennt von den eigenen.</translation>
    </message>
    <message>
        <source>Fifteen minutes with pictures: from the demo shop to the first machine of your own.</source>
        <translation>Fünfzehn Minuten mit Bildern: von der Demo-Werkstatt zur ersten eigenen Maschine.</translation>
    </message>
    <message>
        <source>What every page is for, and all keys; a page&apos;s own help stands beside it.</source>
        <translation>Wozu jede Seite da ist, und alle Tasten; die Hilfe einer Seite steht neben ihr.</translation>
    </message>
</context>
<context>
    <name>FlowForm</name>
    <message>
        <source>Caution: hot nozzle, burns. Ventilate the fumes, never leave it unattended; local rules come first.</source>
        <translation>Vorsicht: heiße Düse, Verbrennungsgefahr. Dämpfe weglüften, nie unbeaufsichtigt lassen; örtliche Regeln gehen vor.</translation>
    </message>
    <message>
        <source>&amp;Factor in force</source>
        <translation>Gültiger &amp;Faktor</translation>
    </message>
    <message>
        <source>&amp;Temperature</source>
        <translation>&amp;Temperatur</translation>
    </message>
    <message>
        <source>°C</source>
        <translation>°C</translation>
    </message>
    <message>
        <source>&amp;Hot end up to</source>
        <translation>&amp;Heizkopf bis</translation>
    </message>
    <message>
        <source>&amp;Rate</source>
        <translation>&amp;Rate</translation>
    </message>
    <message>
        <source>mm³/s</source>
        <translation>mm³/s</translation>
    </message>
    <message>
        <source>No&amp;zzle</source>
        <translation>&amp;Düse</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>La&amp;yer</source>
        <translation>&amp;Schicht</translation>
    </message>
    <message>
        <source>Bead &amp;width</source>
        <translation>Rau&amp;penbreite</translation>
    </message>
    <message>
        <source>obround</source>
        <translation>Langrund</translation>
    </message>
    <message>
        <source>rectangle</source>
        <translation>Rechteck</translation>
    </message>
    <message>
        <source>Bead m&amp;odel</source>
        <translation>Raupenm&amp;odell</translation>
    </message>
</context>
<context>
    <name>FlowPage</name>
    <message>
        <source>Readings</source>
        <translation>Messwerte</translation>
    </message>
    <message>
        <source>Estimates of flow</source>
        <translation>Schätzwerte des Durchflusses</translation>
    </message>
    <message>
        <source>&amp;Picture</source>
        <translation>&amp;Bild</translation>
    </message>
    <message>
        <source>Picture</source>
        <translation>Bild</translation>
    </message>
    <message>
        <source>Flow factor</source>
        <translation>Durchflussfaktor</translation>
    </message>
    <message>
        <source>reading {number}</source>
        <translation>Messwert {number}</translation>
    </message>
    <message>
        <source>Choose or add the filament lot above: a flow factor belongs to a lot.</source>
        <translation>Oben die Filamentcharge wählen oder hinzufügen: Ein Durchflussfaktor gehört zu einer Charge.</translation>
    </message>
</context>
<context>
    <name>GaugeTable</name>
    <message>
        <source>Gauge</source>
        <translation>Stelle</translation>
    </message>
    <message>
        <source>Nominal
mm</source>
        <translation>Nennmaß
mm</translation>
    </message>
    <message>
        <source>Jaws</source>
        <translation>Wo</translation>
    </message>
    <message>
        <source>Times</source>
        <translation>Anzahl</translation>
    </message>
    <message>
        <source>Gauges in the order of reading</source>
        <translation>Messstellen in der Reihenfolge der Messung</translation>
    </message>
</context>
<context>
    <name>HandChecks</name>
    <message>
        <source>&amp;Tone X</source>
        <translation>&amp;Ton X</translation>
    </message>
    <message>
        <source>Tone Y</source>
        <translation>Ton Y</translation>
    </message>
    <message>
        <source>Free span</source>
        <translation>Freie Länge</translation>
    </message>
    <message>
        <source>Belt</source>
        <translation>Riemen</translation>
    </message>
    <message>
        <source>&amp;Read on the rule for 100 mm commanded</source>
        <translation>&amp;Am Lineal abgelesen bei 100 mm befohlen</translation>
    </message>
    <message>
        <source>Wor&amp;ds: what was read or found, or the reason</source>
        <translation>Wo&amp;rte: was abgelesen oder gefunden wurde, oder der Grund</translation>
    </message>
    <message>
        <source>Who is at work here, asked once</source>
        <translation>Wer arbeitet hier, wird einmal gefragt</translation>
    </message>
</context>
<context>
    <name>HelpPane</name>
    <message>
        <source>Help</source>
        <translation>Hilfe</translation>
    </message>
    <message>
        <source>Close   Esc</source>
        <translation>Schließen   Esc</translation>
    </message>
    <message>
        <source>Wider</source>
        <translation>Breiter</translation>
    </message>
    <message>
        <source>Over the whole page, so that pictures can be read; once more beside it again</source>
        <translation>Über die ganze Seite, damit Bilder lesbar sind; noch einmal, und sie steht wieder daneben</translation>
    </message>
    <message>
        <source>Which help</source>
        <translation>Welche Hilfe</translation>
    </message>
    <message>
        <source>This page</source>
        <translation>Diese Seite</translation>
    </message>
    <message>
        <source>Words</source>
        <translation>Begriffe</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>About</source>
        <translation>Über</translation>
    </message>
    <message>
        <source>First steps</source>
        <translation>Erste Schritte</translation>
    </message>
    <message>
        <source>Help of this page</source>
        <translation>Hilfe zu dieser Seite</translation>
    </message>
    <message>
        <source>There is no help for this page yet.</source>
        <translation>Zu dieser Seite gibt es noch keine Hilfe.</translation>
    </message>
    <message>
        <source>Help: {page}</source>
        <translation>Hilfe: {page}</translation>
    </message>
</context>
<context>
    <name>HelpText</name>
    <message>
        <source>Pictures: {pictures}</source>
        <translation>Bilder: {pictures}</translation>
    </message>
</context>
<context>
    <name>InstrumentForm</name>
    <message>
        <source>&amp;Check</source>
        <translation>&amp;Prüfung</translation>
    </message>
    <message>
        <source>&amp;Limit ±</source>
        <translation>&amp;Grenze ±</translation>
    </message>
    <message>
        <source>&amp;Resolution</source>
        <translation>A&amp;uflösung</translation>
    </message>
    <message>
        <source>&amp;Promise ±</source>
        <translation>&amp;Zusage ±</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>&amp;Blade land</source>
        <translation>Schneiden&amp;fase</translation>
    </message>
    <message>
        <source>&amp;Jaws closed</source>
        <translation>Schenkel gesch&amp;lossen</translation>
    </message>
    <message>
        <source>Add a rea&amp;ding</source>
        <translation>Messwert &amp;hinzufügen</translation>
    </message>
    <message>
        <source>Chan&amp;ge instrument…</source>
        <translation>Messmittel ä&amp;ndern…</translation>
    </message>
    <message>
        <source>usual</source>
        <translation>üblich</translation>
    </message>
    <message>
        <source>0.3 to 0.5</source>
        <translation>0,3 bis 0,5</translation>
    </message>
    <message>
        <source>Caution: boiling water and steam scald. Hold the thermometer, not the vessel.</source>
        <translation>Vorsicht: Kochendes Wasser und Dampf verbrühen. Das Thermometer halten, nicht das Gefäß.</translation>
    </message>
    <message>
        <source>Caution: jaws and blades are sharp. Wipe them with paper, never with a finger.</source>
        <translation>Vorsicht: Messschenkel und Schneiden sind scharf. Mit Papier abwischen, nie mit dem Finger.</translation>
    </message>
    <message>
        <source>Wipe instrument and reference; let both lie in one room for an hour.</source>
        <translation>Messmittel und Normal abwischen; beide eine Stunde in demselben Raum liegen lassen.</translation>
    </message>
</context>
<context>
    <name>InstrumentPane</name>
    <message>
        <source>No reference read yet. Its correction appears here at once.</source>
        <translation>Noch kein Normal gemessen. Die Korrektion erscheint hier sofort.</translation>
    </message>
    <message>
        <source>Correction against reference</source>
        <translation>Korrektion über dem Referenzwert</translation>
    </message>
    <message>
        <source>Correction curve</source>
        <translation>Korrektionskurve</translation>
    </message>
    <message>
        <source>Uncertainty budget</source>
        <translation>Messunsicherheitsbudget</translation>
    </message>
    <message>
        <source>Results in doubt</source>
        <translation>Zweifelhafte Ergebnisse</translation>
    </message>
</context>
<context>
    <name>InstrumentsPage</name>
    <message>
        <source>Instruments</source>
        <translation>Messmittel</translation>
    </message>
    <message>
        <source>&amp;Shown</source>
        <translation>&amp;Anzeige</translation>
    </message>
    <message>
        <source>Shown</source>
        <translation>Anzeige</translation>
    </message>
    <message>
        <source>Doubtful: zero had moved when it was looked at next.</source>
        <translation>Zweifelhaft: Bei der nächsten Kontrolle hatte sich der Nullpunkt verschoben.</translation>
    </message>
    <message>
        <source>Kept trials are not changed.</source>
        <translation>Behaltene Versuche werden nicht geändert.</translation>
    </message>
    <message>
        <source>A reading has an open question; answer it, then keep the check.</source>
        <translation>Zu einem Messwert ist eine Frage offen; erst beantworten, dann die Prüfung behalten.</translation>
    </message>
    <message>
        <source>Pick or add the instrument in the top row, then keep the check.</source>
        <translation>Das Messmittel in der obersten Zeile wählen oder hinzufügen, dann die Prüfung behalten.</translation>
    </message>
    <message>
        <source>Pick the instrument in the top row, or add it there. Then type the readings of its check.</source>
        <translation>Das Messmittel in der obersten Zeile wählen oder dort hinzufügen. Dann die Messwerte seiner Prüfung eingeben.</translation>
    </message>
    <message>
        <source>Type the readings of the check.</source>
        <translation>Die Messwerte der Prüfung eingeben.</translation>
    </message>
    <message>
        <source>Check {number} kept; {name} is used with its uncertainties from now on.</source>
        <translation>Prüfung {number} behalten; {name} gilt ab jetzt mit den Unsicherheiten daraus.</translation>
    </message>
    <message>
        <source>Check {number} kept; results in doubt that were read with this instrument: {count}.</source>
        <translation>Prüfung {number} behalten; zweifelhafte Ergebnisse, die mit diesem Messmittel gemessen wurden: {count}.</translation>
    </message>
    <message>
        <source>Pick the instrument in the top row first.</source>
        <translation>Erst das Messmittel in der obersten Zeile wählen.</translation>
    </message>
</context>
<context>
    <name>LadderForm</name>
    <message>
        <source>Step</source>
        <translation>Stufe</translation>
    </message>
    <message>
        <source>Scores</source>
        <translation>Bewertungen</translation>
    </message>
    <message>
        <source>Widths</source>
        <translation>Breiten</translation>
    </message>
    <message>
        <source>Least is best</source>
        <translation>Weniger ist besser</translation>
    </message>
    <message>
        <source>Most is best</source>
        <translation>Mehr ist besser</translation>
    </message>
    <message>
        <source>&amp;Ladder of</source>
        <translation>&amp;Leiter für</translation>
    </message>
    <message>
        <source>&amp;Read by</source>
        <translation>Ver&amp;fahren</translation>
    </message>
    <message>
        <source>&amp;First step</source>
        <translation>E&amp;rste Stufe</translation>
    </message>
    <message>
        <source>La&amp;st step</source>
        <translation>Le&amp;tzte Stufe</translation>
    </message>
    <message>
        <source>Ste&amp;ps</source>
        <translation>St&amp;ufen</translation>
    </message>
    <message>
        <source>Machine up t&amp;o</source>
        <translation>Maschine &amp;bis</translation>
    </message>
    <message>
        <source>No&amp;w set</source>
        <translation>&amp;Jetzt eingest.</translation>
    </message>
    <message>
        <source>Looks</source>
        <translation>Aussehen</translation>
    </message>
    <message>
        <source>Strength</source>
        <translation>Festigkeit</translation>
    </message>
    <message>
        <source>&amp;Goal</source>
        <translation>Zwec&amp;k</translation>
    </message>
    <message>
        <source>The unit of what is read of each specimen; empty for a count.</source>
        <translation>Die Einheit dessen, was an jedem Probestück abgelesen wird; leer für eine Anzahl.</translation>
    </message>
    <message>
        <source>&amp;Value in</source>
        <translation>Ein&amp;heit</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Wert</translation>
    </message>
    <message>
        <source>Score</source>
        <translation>Punkte</translation>
    </message>
    <message>
        <source>Width mm</source>
        <translation>Breite mm</translation>
    </message>
    <message>
        <source>{how} Print: {steps}.</source>
        <translation>{how} Drucken: {steps}.</translation>
    </message>
</context>
<context>
    <name>LadderPage</name>
    <message>
        <source>Ladder</source>
        <translation>Leiter</translation>
    </message>
    <message>
        <source>Of another ladder: it does not count here.</source>
        <translation>Von einer anderen Leiter: zählt hier nicht.</translation>
    </message>
    <message>
        <source>Choose or add the filament lot above: this setting belongs to a lot.</source>
        <translation>Oben die Filamentcharge wählen oder hinzufügen: Diese Einstellung gehört zu einer Charge.</translation>
    </message>
    <message>
        <source>From other ladders</source>
        <translation>Aus anderen Leitern</translation>
    </message>
</context>
<context>
    <name>LayingGrid</name>
    <message>
        <source>obround</source>
        <translation>Langrund</translation>
    </message>
    <message>
        <source>rectangle</source>
        <translation>Rechteck</translation>
    </message>
    <message>
        <source>relative</source>
        <translation>relativ</translation>
    </message>
    <message>
        <source>absolute</source>
        <translation>absolut</translation>
    </message>
    <message>
        <source>&amp;Width</source>
        <translation>B&amp;reite</translation>
    </message>
    <message>
        <source>La&amp;yer</source>
        <translation>&amp;Schicht</translation>
    </message>
    <message>
        <source>M&amp;odel</source>
        <translation>M&amp;odell</translation>
    </message>
    <message>
        <source>Fi&amp;lament</source>
        <translation>Fi&amp;lament</translation>
    </message>
    <message>
        <source>Flow factor</source>
        <translation>Durchflussfaktor</translation>
    </message>
    <message>
        <source>Extrus&amp;ion</source>
        <translation>Extr&amp;usion</translation>
    </message>
    <message>
        <source>&amp;Nozzle</source>
        <translation>&amp;Düse</translation>
    </message>
    <message>
        <source>Be&amp;d</source>
        <translation>Be&amp;tt</translation>
    </message>
    <message>
        <source>&amp;Fan</source>
        <translation>L&amp;üfter</translation>
    </message>
    <message>
        <source>&amp;Speed</source>
        <translation>&amp;Geschw.</translation>
    </message>
    <message>
        <source>&amp;Retraction</source>
        <translation>Rück&amp;zug</translation>
    </message>
    <message>
        <source>From the second layer on.</source>
        <translation>Ab der zweiten Schicht.</translation>
    </message>
</context>
<context>
    <name>LengthField</name>
    <message>
        <source>typed as {text}</source>
        <translation>eingegeben als {text}</translation>
    </message>
</context>
<context>
    <name>LimitsCard</name>
    <message>
        <source>Caution: pluck a belt with the machine off and its axes at rest.</source>
        <translation>Vorsicht: einen Riemen nur bei ausgeschalteter Maschine und stehenden Achsen zupfen.</translation>
    </message>
    <message>
        <source>What the drive allows</source>
        <translation>Was der Antrieb zulässt</translation>
    </message>
    <message>
        <source>Type a layer height, a speed with the step rate of the controller, a load, or a tone.</source>
        <translation>Eine Schichthöhe, eine Geschwindigkeit mit der Schrittrate der Steuerung, eine Last oder einen Ton eingeben.</translation>
    </message>
    <message>
        <source>Layer</source>
        <translation>Schicht</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>Speed</source>
        <translation>Geschwindigkeit</translation>
    </message>
    <message>
        <source>mm/s</source>
        <translation>mm/s</translation>
    </message>
    <message>
        <source>Steps</source>
        <translation>Schritte</translation>
    </message>
    <message>
        <source>kHz</source>
        <translation>kHz</translation>
    </message>
    <message>
        <source>Load</source>
        <translation>Last</translation>
    </message>
    <message>
        <source>%</source>
        <translation>%</translation>
    </message>
    <message>
        <source>Supply</source>
        <translation>Speisung</translation>
    </message>
    <message>
        <source>V</source>
        <translation>V</translation>
    </message>
    <message>
        <source>Current</source>
        <translation>Strom</translation>
    </message>
    <message>
        <source>A</source>
        <translation>A</translation>
    </message>
    <message>
        <source>Winding</source>
        <translation>Wicklung</translation>
    </message>
    <message>
        <source>mH</source>
        <translation>mH</translation>
    </message>
    <message>
        <source>Feed</source>
        <translation>Vorschub</translation>
    </message>
    <message>
        <source>steps/mm</source>
        <translation>Schritte/mm</translation>
    </message>
    <message>
        <source>Flow</source>
        <translation>Durchfluss</translation>
    </message>
    <message>
        <source>mm³/s</source>
        <translation>mm³/s</translation>
    </message>
    <message>
        <source>Filament</source>
        <translation>Filament</translation>
    </message>
    <message>
        <source>At radius</source>
        <translation>Bei Radius</translation>
    </message>
    <message>
        <source>Centre off</source>
        <translation>Abw. Mitte</translation>
    </message>
    <message>
        <source>Belt width</source>
        <translation>Riemenbreite</translation>
    </message>
    <message>
        <source>Free span</source>
        <translation>Freie Länge</translation>
    </message>
    <message>
        <source>Tone</source>
        <translation>Ton</translation>
    </message>
    <message>
        <source>Hz</source>
        <translation>Hz</translation>
    </message>
    <message>
        <source>Rod set</source>
        <translation>Stange eing.</translation>
    </message>
    <message>
        <source>measured</source>
        <translation>gemessen</translation>
    </message>
    <message>
        <source>Radius</source>
        <translation>Radius</translation>
    </message>
</context>
<context>
    <name>LimitsGrid</name>
    <message>
        <source>&amp;Hot end up to</source>
        <translation>&amp;Heizkopf bis</translation>
    </message>
    <message>
        <source>Bed up to</source>
        <translation>Bett bis</translation>
    </message>
    <message>
        <source>Speed up to</source>
        <translation>Geschwindigkeit bis</translation>
    </message>
    <message>
        <source>Rate u&amp;p to</source>
        <translation>&amp;Kunststoffrate bis</translation>
    </message>
</context>
<context>
    <name>LineField</name>
    <message>
        <source>Nothing is typed here yet; this one is needed.</source>
        <translation>Hier steht noch nichts; diese Angabe wird gebraucht.</translation>
    </message>
</context>
<context>
    <name>LogModel</name>
    <message>
        <source>When</source>
        <translation>Wann</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Wo</translation>
    </message>
    <message>
        <source>Who</source>
        <translation>Wer</translation>
    </message>
</context>
<context>
    <name>LogPane</name>
    <message>
        <source>whole shop</source>
        <translation>ganze Werkstatt</translation>
    </message>
    <message>
        <source>lot {name}</source>
        <translation>Charge {name}</translation>
    </message>
    <message>
        <source>{machine} with {lot}</source>
        <translation>{machine} mit {lot}</translation>
    </message>
    <message>
        <source>Nothing was kept here yet.</source>
        <translation>Hier wurde noch nichts behalten.</translation>
    </message>
    <message>
        <source>; the newest, choose a machine for older ones</source>
        <translation>; die neuesten, für ältere eine Maschine wählen</translation>
    </message>
    <message>
        <source>Whose log</source>
        <translation>Wessen Logbuch</translation>
    </message>
    <message>
        <source>Kind of entries</source>
        <translation>Art der Einträge</translation>
    </message>
    <message>
        <source>all entries</source>
        <translation>alle Einträge</translation>
    </message>
    <message>
        <source>trials</source>
        <translation>Versuche</translation>
    </message>
    <message>
        <source>settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>events</source>
        <translation>Ereignisse</translation>
    </message>
    <message>
        <source>find in the log</source>
        <translation>suchen</translation>
    </message>
    <message>
        <source>Find in the log</source>
        <translation>Im Logbuch suchen</translation>
    </message>
    <message>
        <source>Who is at work here</source>
        <translation>Wer arbeitet hier</translation>
    </message>
    <message>
        <source>At wor&amp;k</source>
        <translation>Hier &amp;arbeitet</translation>
    </message>
    <message>
        <source>Entries: {every}</source>
        <translation>Einträge: {every}</translation>
    </message>
    <message>
        <source>Entries: {seen} of {every}</source>
        <translation>Einträge: {seen} von {every}</translation>
    </message>
    <message>
        <source>your name</source>
        <translation>Ihr Name</translation>
    </message>
    <message>
        <source>Entries of the log</source>
        <translation>Einträge des Logbuchs</translation>
    </message>
</context>
<context>
    <name>LogbookPage</name>
    <message>
        <source>Logbook</source>
        <translation>Logbuch</translation>
    </message>
    <message>
        <source>Log or settings</source>
        <translation>Logbuch oder Einstellungen</translation>
    </message>
    <message>
        <source>Trials are kept on their pages; F8 logs what happened.</source>
        <translation>Versuche werden auf ihren Seiten behalten; F8 trägt ein, was geschehen ist.</translation>
    </message>
    <message>
        <source>Done; the entry before stays in the logbook.</source>
        <translation>Erledigt; der vorige Eintrag bleibt im Logbuch.</translation>
    </message>
    <message>
        <source>Note added.</source>
        <translation>Notiz hinzugefügt.</translation>
    </message>
    <message>
        <source>Attach a picture</source>
        <translation>Bild anhängen</translation>
    </message>
    <message>
        <source>Pictures (*.jpg *.jpeg *.png *.webp *.bmp)</source>
        <translation>Bilder (*.jpg *.jpeg *.png *.webp *.bmp)</translation>
    </message>
    <message>
        <source>Picture attached.</source>
        <translation>Bild angehängt.</translation>
    </message>
    <message>
        <source>Log</source>
        <translation>Einträge</translation>
    </message>
    <message>
        <source>Settings in force</source>
        <translation>Gültige Einstellungen</translation>
    </message>
    <message>
        <source>Put in force</source>
        <translation>In Kraft setzen</translation>
    </message>
</context>
<context>
    <name>LongWork</name>
    <message>
        <source>The records are brought up to date</source>
        <translation>Die Aufzeichnungen werden auf den neuen Stand gebracht</translation>
    </message>
    <message>
        <source>They were written by an earlier version of this program. If you stop this, they stay as they were.</source>
        <translation>Sie stammen von einer früheren Fassung dieses Programms. Wird dies angehalten, bleiben sie, wie sie waren.</translation>
    </message>
    <message>
        <source>The copy is put in place</source>
        <translation>Die Kopie wird eingesetzt</translation>
    </message>
    <message>
        <source>It is checked first. If you stop this, everything stays as it is.</source>
        <translation>Sie wird zuerst geprüft. Wird dies angehalten, bleibt alles, wie es ist.</translation>
    </message>
</context>
<context>
    <name>LotCard</name>
    <message>
        <source>Save lot   Ctrl+S</source>
        <translation>Charge speichern   Strg+S</translation>
    </message>
    <message>
        <source>New &amp;lot</source>
        <translation>Neue &amp;Charge</translation>
    </message>
</context>
<context>
    <name>LotForm</name>
    <message>
        <source>&amp;Name</source>
        <translation>&amp;Name</translation>
    </message>
    <message>
        <source>Mate&amp;rial</source>
        <translation>We&amp;rkstoff</translation>
    </message>
    <message>
        <source>Ma&amp;ker</source>
        <translation>&amp;Hersteller</translation>
    </message>
    <message>
        <source>&amp;Colour</source>
        <translation>&amp;Farbe</translation>
    </message>
    <message>
        <source>&amp;Batch</source>
        <translation>Fertigungsl&amp;os</translation>
    </message>
    <message>
        <source>&amp;Diameter claimed</source>
        <translation>Angegebener &amp;Durchm.</translation>
    </message>
    <message>
        <source>&amp;Tolerance claimed ±</source>
        <translation>Angegebene &amp;Toleranz ±</translation>
    </message>
    <message>
        <source>Em&amp;pty spool</source>
        <translation>&amp;Leere Spule</translation>
    </message>
    <message>
        <source>N&amp;ote</source>
        <translation>&amp;Bemerkung</translation>
    </message>
</context>
<context>
    <name>LotPane</name>
    <message>
        <source>Moisture and stock</source>
        <translation>Feuchte und Bestand</translation>
    </message>
    <message>
        <source>Keep wei&amp;ghing</source>
        <translation>&amp;Wägung behalten</translation>
    </message>
</context>
<context>
    <name>LotsPage</name>
    <message>
        <source>Lots</source>
        <translation>Chargen</translation>
    </message>
    <message>
        <source>{name} saved.</source>
        <translation>{name} gespeichert.</translation>
    </message>
    <message>
        <source>Weighing {number} kept.</source>
        <translation>Wägung {number} behalten.</translation>
    </message>
    <message>
        <source>Cannot tell yet:</source>
        <translation>Lässt sich noch nicht sagen:</translation>
    </message>
    <message>
        <source>Save the lot first, then keep the weighing.</source>
        <translation>Erst die Charge speichern, dann die Wägung behalten.</translation>
    </message>
    <message>
        <source>Not weighed yet. Type the mass of the spool as it is now.</source>
        <translation>Noch nicht gewogen. Die jetzige Masse der Spule eingeben.</translation>
    </message>
</context>
<context>
    <name>MachineCard</name>
    <message>
        <source>Save machine   Ctrl+S</source>
        <translation>Maschine speichern   Strg+S</translation>
    </message>
    <message>
        <source>Ne&amp;w machine</source>
        <translation>Neue Mas&amp;chine</translation>
    </message>
</context>
<context>
    <name>MachineForm</name>
    <message>
        <source>Axis</source>
        <translation>Achse</translation>
    </message>
    <message>
        <source>&amp;Same parts as X</source>
        <translation>Gleiche Teile wie &amp;X</translation>
    </message>
    <message>
        <source>cartesian</source>
        <translation>kartesisch</translation>
    </message>
    <message>
        <source>crossed belts</source>
        <translation>gekreuzte Riemen</translation>
    </message>
    <message>
        <source>delta</source>
        <translation>Delta</translation>
    </message>
    <message>
        <source>&amp;Name</source>
        <translation>&amp;Name</translation>
    </message>
    <message>
        <source>Mot&amp;ion</source>
        <translation>Ba&amp;uart</translation>
    </message>
    <message>
        <source>Travel X</source>
        <translation>Verfahrweg X</translation>
    </message>
    <message>
        <source>Travel Y</source>
        <translation>Verfahrweg Y</translation>
    </message>
    <message>
        <source>Travel Z</source>
        <translation>Verfahrweg Z</translation>
    </message>
    <message>
        <source>measure it</source>
        <translation>messen</translation>
    </message>
    <message>
        <source>A and B (X, Y)</source>
        <translation>A und B (X, Y)</translation>
    </message>
    <message>
        <source>Carriages (X, Y, Z)</source>
        <translation>Schlitten (X, Y, Z)</translation>
    </message>
</context>
<context>
    <name>MainWindow</name>
    <message>
        <source>Tried again; it is not open yet.</source>
        <translation>Noch einmal versucht; sie ist noch nicht offen.</translation>
    </message>
    <message>
        <source>Opening the database…</source>
        <translation>Datenbank wird geöffnet…</translation>
    </message>
    <message>
        <source>Demo shop, invented data – {title}</source>
        <translation>Demo-Werkstatt, erfundene Daten – {title}</translation>
    </message>
    <message>
        <source>What was typed last could not be stored, see the notice line. Leave without it?</source>
        <translation>Die letzte Eingabe ließ sich nicht speichern, siehe Meldungszeile. Ohne sie beenden?</translation>
    </message>
    <message>
        <source>&amp;Leave without it</source>
        <translation>&amp;Ohne sie beenden</translation>
    </message>
    <message>
        <source>&amp;Stay</source>
        <translation>&amp;Bleiben</translation>
    </message>
</context>
<context>
    <name>MapPane</name>
    <message>
        <source>plane taken out</source>
        <translation>Ebene abgezogen</translation>
    </message>
    <message>
        <source>scale ±{limit} mm</source>
        <translation>Skala ±{limit} mm</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>{name} at {x}, {y} mm: {height} {mm}, above the plane {residual} {mm}</source>
        <translation>{name} bei {x}, {y} mm: {height} {mm}, über der Ebene {residual} {mm}</translation>
    </message>
    <message>
        <source>X, mm (front)</source>
        <translation>X, mm (vorn)</translation>
    </message>
    <message>
        <source>Y</source>
        <translation>Y</translation>
    </message>
    <message>
        <source>0 mm</source>
        <translation>0 mm</translation>
    </message>
</context>
<context>
    <name>MassForm</name>
    <message>
        <source>Piece</source>
        <translation>Stück</translation>
    </message>
    <message>
        <source>Mass g</source>
        <translation>Masse g</translation>
    </message>
    <message>
        <source>Asks for %</source>
        <translation>Verlangt %</translation>
    </message>
    <message>
        <source>Add a mas&amp;s</source>
        <translation>Masse hinzuf&amp;ügen</translation>
    </message>
    <message>
        <source>density</source>
        <translation>Dichte</translation>
    </message>
    <message>
        <source>length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>mm as set</source>
        <translation>mm, gesetzt</translation>
    </message>
    <message>
        <source>mm at 1</source>
        <translation>mm bei 1</translation>
    </message>
    <message>
        <source>cm³ as set</source>
        <translation>cm³, gesetzt</translation>
    </message>
    <message>
        <source>cm³ at 1</source>
        <translation>cm³ bei 1</translation>
    </message>
    <message>
        <source>Weighed &amp;by</source>
        <translation>Wäg&amp;ung über</translation>
    </message>
    <message>
        <source>&amp;Density</source>
        <translation>Di&amp;chte</translation>
    </message>
    <message>
        <source>g/cm³</source>
        <translation>g/cm³</translation>
    </message>
    <message>
        <source>g/m</source>
        <translation>g/m</translation>
    </message>
    <message>
        <source>Per &amp;length</source>
        <translation>&amp;Je Länge</translation>
    </message>
    <message>
        <source>Balance, &amp;1 u</source>
        <translation>Waage, &amp;1 u</translation>
    </message>
    <message>
        <source>g</source>
        <translation>g</translation>
    </message>
    <message>
        <source>Path &amp;counted</source>
        <translation>Weg ge&amp;zählt in</translation>
    </message>
    <message>
        <source>Path len&amp;gth</source>
        <translation>Weglän&amp;ge</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>Path &amp;volume</source>
        <translation>Wegvo&amp;lumen</translation>
    </message>
    <message>
        <source>cm³</source>
        <translation>cm³</translation>
    </message>
    <message>
        <source>F&amp;ilament set</source>
        <translation>Fil&amp;ament eingest.</translation>
    </message>
    <message>
        <source>As set: the path holds the flow factor already. At 1: it does not, the machine applies it.</source>
        <translation>Wie eingestellt: Der Weg enthält den Durchflussfaktor schon. Bei 1: nicht, die Maschine wendet ihn an.</translation>
    </message>
</context>
<context>
    <name>MassPage</name>
    <message>
        <source>Mass</source>
        <translation>Masse</translation>
    </message>
    <message>
        <source>No mass yet. Weigh a piece without infill, 5 g or more, with what its path counts.</source>
        <translation>Noch keine Masse. Ein Stück ohne Füllung wägen, 5 g oder mehr, und eingeben, was sein Weg zählt.</translation>
    </message>
    <message>
        <source>piece</source>
        <translation>Stück</translation>
    </message>
    <message>
        <source>mass, g</source>
        <translation>Masse, g</translation>
    </message>
    <message>
        <source>g</source>
        <translation>g</translation>
    </message>
</context>
<context>
    <name>MaterialCard</name>
    <message>
        <source>Usual for the material</source>
        <translation>Üblich für den Werkstoff</translation>
    </message>
    <message>
        <source>Nothing on record for “{text}”.</source>
        <translation>Zu „{text}“ ist nichts erfasst.</translation>
    </message>
    <message>
        <source>Type a material: what is usual for it appears here.</source>
        <translation>Einen Werkstoff eingeben: Übliche Werte erscheinen hier.</translation>
    </message>
    <message>
        <source>Usual for {name}</source>
        <translation>Üblich für {name}</translation>
    </message>
    <message>
        <source>A filled or blended grade differs: measure its density.</source>
        <translation>Gefüllte oder gemischte Sorten weichen ab: ihre Dichte messen.</translation>
    </message>
    <message>
        <source>{figures}: {source}.</source>
        <translation>{figures}: {source}.</translation>
    </message>
    <message>
        <source>Moulding shrinkage is not that of a printed part. Measure your own lot.</source>
        <translation>Formschwindung ist nicht die eines gedruckten Teils. Die eigene Charge messen.</translation>
    </message>
    <message>
        <source>{low}–{high}</source>
        <translation>{low}–{high}</translation>
    </message>
    <message>
        <source>{typical} ({span})</source>
        <translation>{typical} ({span})</translation>
    </message>
    <message>
        <source>seen in print</source>
        <translation>in der Literatur belegt</translation>
    </message>
    <message>
        <source>unverified</source>
        <translation>ungeprüft</translation>
    </message>
</context>
<context>
    <name>MixupCard</name>
    <message>
        <source>Caution: axes start without warning. Nothing in the travel, lowest speed, off switch at hand.</source>
        <translation>Vorsicht: Achsen laufen ohne Warnung an. Nichts im Verfahrweg, kleinste Geschwindigkeit, Ausschalter in Reichweite.</translation>
    </message>
    <message>
        <source>Result of the mix-up finder</source>
        <translation>Ergebnis des Verwechslungssuchers</translation>
    </message>
    <message>
        <source>In controller:</source>
        <translation>In der Steuerung:</translation>
    </message>
    <message>
        <source>Measured:</source>
        <translation>Gemessen:</translation>
    </message>
    <message>
        <source>Type the value found, or command a long travel and measure it: the wrong part that explains it is named.</source>
        <translation>Den vorgefundenen Wert eingeben oder einen langen Weg befehlen und messen: Das falsche Teil, das ihn erklärt, wird genannt.</translation>
    </message>
    <message>
        <source>In controller</source>
        <translation>In Steuerung</translation>
    </message>
    <message>
        <source>steps/mm</source>
        <translation>Schritte/mm</translation>
    </message>
    <message>
        <source>Commanded</source>
        <translation>Befohlen</translation>
    </message>
    <message>
        <source>Measured</source>
        <translation>Gemessen</translation>
    </message>
    <message>
        <source>travel</source>
        <translation>Verfahrweg</translation>
    </message>
    <message>
        <source>printed part</source>
        <translation>gedrucktes Teil</translation>
    </message>
    <message>
        <source>Measured on</source>
        <translation>Gemessen am</translation>
    </message>
    <message>
        <source>Reading ±</source>
        <translation>Messwert ±</translation>
    </message>
    <message>
        <source>Shrinks up to</source>
        <translation>Schwindet bis</translation>
    </message>
</context>
<context>
    <name>NoticeLine</name>
    <message>
        <source>Notice</source>
        <translation>Meldung</translation>
    </message>
    <message>
        <source>Withdraw it…</source>
        <translation>Zurückziehen…</translation>
    </message>
    <message>
        <source>A kept trial is not undone: it is withdrawn in the logbook, with the reason.</source>
        <translation>Ein behaltener Versuch wird nicht rückgängig gemacht: Er wird im Logbuch zurückgezogen, mit dem Grund.</translation>
    </message>
</context>
<context>
    <name>NumberField</name>
    <message>
        <source>“{text}” is not a number; type for example {example}, without thousands separators.</source>
        <translation>„{text}“ ist keine Zahl; zum Beispiel {example} eingeben, ohne Tausendertrennzeichen.</translation>
    </message>
    <message>
        <source>{value} is too small: at least {limit}.</source>
        <translation>{value} ist zu klein: mindestens {limit}.</translation>
    </message>
    <message>
        <source>{value} is too large: at most {limit}.</source>
        <translation>{value} ist zu groß: höchstens {limit}.</translation>
    </message>
</context>
<context>
    <name>NumberGrid</name>
    <message>
        <source>Nothing is typed here yet; this one is needed.</source>
        <translation>Hier steht noch nichts; diese Angabe wird gebraucht.</translation>
    </message>
</context>
<context>
    <name>Page</name>
    <message>
        <source>Trial {number} kept.</source>
        <translation>Versuch {number} behalten.</translation>
    </message>
    <message>
        <source>What was typed for the machine picked before is not stored yet; it stays here until it is.</source>
        <translation>Die Eingaben zur vorher gewählten Maschine sind noch nicht gespeichert; sie bleiben bis dahin hier stehen.</translation>
    </message>
</context>
<context>
    <name>PickerRow</name>
    <message>
        <source>Machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>New machine…</source>
        <translation>Neue Maschine…</translation>
    </message>
    <message>
        <source>Filament lot</source>
        <translation>Filamentcharge</translation>
    </message>
    <message>
        <source>New lot…</source>
        <translation>Neue Charge…</translation>
    </message>
    <message>
        <source>Instrument</source>
        <translation>Messmittel</translation>
    </message>
    <message>
        <source>New instrument…</source>
        <translation>Neues Messmittel…</translation>
    </message>
    <message>
        <source>&amp;Machine</source>
        <translation>&amp;Maschine</translation>
    </message>
    <message>
        <source>Filam&amp;ent lot</source>
        <translation>Charg&amp;e</translation>
    </message>
    <message>
        <source>Instr&amp;ument</source>
        <translation>Messm&amp;ittel</translation>
    </message>
    <message>
        <source>Walk   F9</source>
        <translation>Gang   F9</translation>
    </message>
    <message>
        <source>Back to the walk</source>
        <translation>Zurück zum Gang</translation>
    </message>
    <message>
        <source>Back to the setup walk of this machine (F9)</source>
        <translation>Zurück zum Einrichtungsgang dieser Maschine (F9)</translation>
    </message>
    <message>
        <source>Log…   F8</source>
        <translation>Eintragen…   F8</translation>
    </message>
    <message>
        <source>Log what happened</source>
        <translation>Eintragen, was geschehen ist</translation>
    </message>
    <message>
        <source>Log what happened: a new belt, nozzle or spool, a crash, … (F8)</source>
        <translation>Eintragen, was geschehen ist: neuer Riemen, neue Düse oder Spule, Zusammenstoß … (F8)</translation>
    </message>
</context>
<context>
    <name>PicturePane</name>
    <message>
        <source>Picture</source>
        <translation>Bild</translation>
    </message>
    <message>
        <source>Copy or save the picture</source>
        <translation>Bild kopieren oder speichern</translation>
    </message>
    <message>
        <source>{title}: arrow keys tell the points</source>
        <translation>{title}: Pfeiltasten nennen die Punkte</translation>
    </message>
    <message>
        <source>The picture is on the clipboard.</source>
        <translation>Das Bild ist in der Zwischenablage.</translation>
    </message>
    <message>
        <source>Picture saved: {path}</source>
        <translation>Bild gespeichert: {path}</translation>
    </message>
    <message>
        <source>{path} cannot be written; choose another folder, or free the disk.</source>
        <translation>{path} kann nicht geschrieben werden; einen anderen Ordner wählen oder Platz schaffen.</translation>
    </message>
    <message>
        <source>Copy picture</source>
        <translation>Bild kopieren</translation>
    </message>
    <message>
        <source>Save as PNG…</source>
        <translation>Als PNG speichern…</translation>
    </message>
    <message>
        <source>Save the picture</source>
        <translation>Bild speichern</translation>
    </message>
</context>
<context>
    <name>PieceSketch</name>
    <message>
        <source>Sketch of the piece</source>
        <translation>Skizze des Prüfstücks</translation>
    </message>
    <message>
        <source>№ {number}   {length} mm</source>
        <translation>№ {number}   {length} mm</translation>
    </message>
    <message>
        <source>{length} mm</source>
        <translation>{length} mm</translation>
    </message>
</context>
<context>
    <name>PieceView</name>
    <message>
        <source>№ {number}   {name}, {length}: {says}</source>
        <translation>№ {number}   {name}, {length}: {says}</translation>
    </message>
</context>
<context>
    <name>PiecesForm</name>
    <message>
        <source>Save as &amp;3MF…</source>
        <translation>Als &amp;3MF speichern…</translation>
    </message>
    <message>
        <source>Sa&amp;ve as STL…</source>
        <translation>Als S&amp;TL speichern…</translation>
    </message>
    <message>
        <source>every gauge alike</source>
        <translation>alle Messstellen gleich</translation>
    </message>
    <message>
        <source>for all causes</source>
        <translation>für alle Ursachen</translation>
    </message>
    <message>
        <source>for the scale</source>
        <translation>für den Maßstab</translation>
    </message>
    <message>
        <source>&amp;Piece</source>
        <translation>&amp;Prüfstück</translation>
    </message>
    <message>
        <source>Readings s&amp;hared</source>
        <translation>Messwerte &amp;verteilt</translation>
    </message>
    <message>
        <source>&amp;Rounds</source>
        <translation>D&amp;urchgänge</translation>
    </message>
    <message>
        <source>Sc&amp;ale error that matters</source>
        <translation>Maßstabs&amp;fehler von Belang</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>Bed &amp;X</source>
        <translation>Bett &amp;X</translation>
    </message>
    <message>
        <source>Bed &amp;Y</source>
        <translation>Bett &amp;Y</translation>
    </message>
    <message>
        <source>&amp;Caliper up to</source>
        <translation>Messschieber &amp;bis</translation>
    </message>
    <message>
        <source>Whole &amp;turn X</source>
        <translation>Volle Umd&amp;r. X</translation>
    </message>
    <message>
        <source>Whole tur&amp;n Y</source>
        <translation>V&amp;olle Umdr. Y</translation>
    </message>
    <message>
        <source>&amp;Blade reach</source>
        <translation>Schneiden&amp;länge</translation>
    </message>
    <message>
        <source>&amp;Layer</source>
        <translation>&amp;Schicht</translation>
    </message>
    <message>
        <source>F&amp;irst layer</source>
        <translation>Erste S&amp;chicht</translation>
    </message>
    <message>
        <source>N&amp;ozzle bore</source>
        <translation>&amp;Düsenbohrung</translation>
    </message>
    <message>
        <source>One readin&amp;g, sd</source>
        <translation>Ein Mess&amp;wert, s</translation>
    </message>
    <message>
        <source>One &amp;wall, sd</source>
        <translation>Eine W&amp;and, s</translation>
    </message>
</context>
<context>
    <name>PiecesPage</name>
    <message>
        <source>Pieces</source>
        <translation>Prüfstücke</translation>
    </message>
    <message>
        <source>What it will tell</source>
        <translation>Was es aussagen wird</translation>
    </message>
    <message>
        <source>Rea&amp;d this piece</source>
        <translation>Stück messe&amp;n</translation>
    </message>
    <message>
        <source>Read this piece</source>
        <translation>Dieses Prüfstück messen</translation>
    </message>
    <message>
        <source>Read its diagonal&amp;s</source>
        <translation>Dia&amp;gonalen messen</translation>
    </message>
    <message>
        <source>No piece:</source>
        <translation>Kein Prüfstück:</translation>
    </message>
    <message>
        <source>Written: {path}. Print it, let it cool, then read it.</source>
        <translation>Geschrieben: {path}. Drucken, abkühlen lassen, dann messen.</translation>
    </message>
    <message>
        <source>Save the piece</source>
        <translation>Prüfstück speichern</translation>
    </message>
</context>
<context>
    <name>PlotPane</name>
    <message>
        <source>No readings yet. Each reading appears here as soon as it is typed.</source>
        <translation>Noch keine Messwerte. Jeder Messwert erscheint hier, sobald er eingegeben ist.</translation>
    </message>
    <message>
        <source>95 % bands</source>
        <translation>95-%-Bänder</translation>
    </message>
    <message>
        <source>small-piece correction</source>
        <translation>Kleinteilkorrektur</translation>
    </message>
    <message>
        <source>Plot</source>
        <translation>Diagramm</translation>
    </message>
    <message>
        <source>{title}: arrow keys tell the readings</source>
        <translation>{title}: Pfeiltasten nennen die Messwerte</translation>
    </message>
    <message>
        <source>The picture is on the clipboard.</source>
        <translation>Das Bild ist in der Zwischenablage.</translation>
    </message>
    <message>
        <source>Save the picture</source>
        <translation>Bild speichern</translation>
    </message>
    <message>
        <source>Picture</source>
        <translation>Bild</translation>
    </message>
    <message>
        <source>Copy or save the picture</source>
        <translation>Bild kopieren oder speichern</translation>
    </message>
    <message>
        <source>Copy picture</source>
        <translation>Bild kopieren</translation>
    </message>
    <message>
        <source>Save as PNG…</source>
        <translation>Als PNG speichern…</translation>
    </message>
    <message>
        <source>Save as SVG…</source>
        <translation>Als SVG speichern…</translation>
    </message>
    <message>
        <source>Show all again</source>
        <translation>Alles wieder zeigen</translation>
    </message>
    <message>
        <source>Picture saved: {path}</source>
        <translation>Bild gespeichert: {path}</translation>
    </message>
    <message>
        <source>{path} cannot be written; choose another folder, or free the disk.</source>
        <translation>{path} kann nicht geschrieben werden; einen anderen Ordner wählen oder Platz schaffen.</translation>
    </message>
</context>
<context>
    <name>Popover</name>
    <message>
        <source>&amp;Add</source>
        <translation>Hin&amp;zufügen</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Abbrechen</translation>
    </message>
</context>
<context>
    <name>PredictionPage</name>
    <message>
        <source>Prediction</source>
        <translation>Vorhersage</translation>
    </message>
    <message>
        <source>Nothing predicted yet.</source>
        <translation>Noch nichts vorhergesagt.</translation>
    </message>
    <message>
        <source>Feature</source>
        <translation>Merkmal</translation>
    </message>
    <message>
        <source>Nominal, mm</source>
        <translation>Nennmaß, mm</translation>
    </message>
    <message>
        <source>Predicted, mm</source>
        <translation>Vorhergesagt, mm</translation>
    </message>
    <message>
        <source>Read, mm</source>
        <translation>Gemessen, mm</translation>
    </message>
    <message>
        <source>E_n</source>
        <translation>E_n</translation>
    </message>
    <message>
        <source>Predictions in numbers</source>
        <translation>Vorhersagen in Zahlen</translation>
    </message>
    <message>
        <source>What it says</source>
        <translation>Was sie aussagt</translation>
    </message>
    <message>
        <source>Lock the prediction</source>
        <translation>Vorhersage festschreiben</translation>
    </message>
    <message>
        <source>Keep it</source>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>Nothing verifies this prediction yet, so there is nothing to keep.</source>
        <translation>Noch bestätigt nichts diese Vorhersage, also gibt es nichts zu behalten.</translation>
    </message>
    <message>
        <source>Predicted</source>
        <translation>Vorhergesagt</translation>
    </message>
    <message>
        <source>Cannot tell</source>
        <translation>Lässt sich nicht sagen</translation>
    </message>
    <message>
        <source>Choose a machine and a lot above.</source>
        <translation>Oben eine Maschine und eine Charge wählen.</translation>
    </message>
    <message>
        <source>Keep a size trial of this machine and lot first: the next piece is predicted from it.</source>
        <translation>Erst einen Maßversuch dieser Maschine und Charge behalten: Das nächste Stück wird daraus vorhergesagt.</translation>
    </message>
    <message>
        <source>new one</source>
        <translation>neue</translation>
    </message>
    <message>
        <source>none yet</source>
        <translation>noch keiner</translation>
    </message>
    <message>
        <source>&amp;Prediction</source>
        <translation>&amp;Vorhersage</translation>
    </message>
    <message>
        <source>From si&amp;ze trial</source>
        <translation>A&amp;us Maßversuch</translation>
    </message>
    <message>
        <source>&amp;Offset</source>
        <translation>Ver&amp;satz</translation>
    </message>
    <message>
        <source>mm a side</source>
        <translation>mm je Seite</translation>
    </message>
    <message>
        <source>&amp;X drawn</source>
        <translation>&amp;X gezeichnet</translation>
    </message>
    <message>
        <source>times</source>
        <translation>mal</translation>
    </message>
    <message>
        <source>&amp;Y drawn</source>
        <translation>&amp;Y gezeichnet</translation>
    </message>
    <message>
        <source>&amp;Read as size trial</source>
        <translation>&amp;Gemessen als Maßversuch</translation>
    </message>
</context>
<context>
    <name>PromisePage</name>
    <message>
        <source>Promise</source>
        <translation>Zusage</translation>
    </message>
    <message>
        <source>own, plus-minus</source>
        <translation>eigene, plus/minus</translation>
    </message>
    <message>
        <source>No pieces yet.</source>
        <translation>Noch keine Stücke.</translation>
    </message>
    <message>
        <source>Features</source>
        <translation>Merkmale</translation>
    </message>
    <message>
        <source>Parts</source>
        <translation>Teile</translation>
    </message>
    <message>
        <source>Mean error, mm</source>
        <translation>Mittlerer Fehler, mm</translation>
    </message>
    <message>
        <source>Spread, mm</source>
        <translation>Streuung, mm</translation>
    </message>
    <message>
        <source>Promise, mm</source>
        <translation>Zusage, mm</translation>
    </message>
    <message>
        <source>Cp (95 %)</source>
        <translation>Cp (95 %)</translation>
    </message>
    <message>
        <source>Cpk (95 %)</source>
        <translation>Cpk (95 %)</translation>
    </message>
    <message>
        <source>Held to, mm</source>
        <translation>Gilt bis, mm</translation>
    </message>
    <message>
        <source>Promises in numbers</source>
        <translation>Zusagen in Zahlen</translation>
    </message>
    <message>
        <source>What may be promised</source>
        <translation>Was zugesagt werden darf</translation>
    </message>
    <message>
        <source>Repo&amp;rts</source>
        <translation>Be&amp;richte</translation>
    </message>
    <message>
        <source>Choose a machine and a lot above: a promise is made for the two.</source>
        <translation>Oben eine Maschine und eine Charge wählen: Eine Zusage gilt für diese beiden.</translation>
    </message>
    <message>
        <source>Error against part size</source>
        <translation>Abweichung über der Teilegröße</translation>
    </message>
    <message>
        <source>Nothing can be promised yet, so nothing is kept.</source>
        <translation>Noch kann nichts zugesagt werden, also wird nichts behalten.</translation>
    </message>
    <message>
        <source>&amp;Features</source>
        <translation>Mer&amp;kmale</translation>
    </message>
    <message>
        <source>&amp;Tolerance asked for</source>
        <translation>&amp;Verlangte Toleranz</translation>
    </message>
    <message>
        <source>&amp;Plus-minus</source>
        <translation>&amp;Plus/minus</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>Pe&amp;g</source>
        <translation>&amp;Zapfen</translation>
    </message>
    <message>
        <source>Go toget&amp;her</source>
        <translation>Fü&amp;gbar</translation>
    </message>
    <message>
        <source>%</source>
        <translation>%</translation>
    </message>
</context>
<context>
    <name>Rail</name>
    <message>
        <source>Help   F1</source>
        <translation>Hilfe   F1</translation>
    </message>
    <message>
        <source>Pages</source>
        <translation>Seiten</translation>
    </message>
    <message>
        <source>Light theme</source>
        <translation>Helles Design</translation>
    </message>
    <message>
        <source>Dark theme</source>
        <translation>Dunkles Design</translation>
    </message>
</context>
<context>
    <name>ReadingCells</name>
    <message>
        <source>kept</source>
        <translation>behalten</translation>
    </message>
    <message>
        <source>Excluded: {reason}</source>
        <translation>Ausgeschlossen: {reason}</translation>
    </message>
    <message>
        <source>Kept; hidden until all judges have scored.</source>
        <translation>Behalten; verdeckt, bis alle Bewerter bewertet haben.</translation>
    </message>
    <message>
        <source>typed as {text}</source>
        <translation>eingegeben als {text}</translation>
    </message>
</context>
<context>
    <name>ReadingEntry</name>
    <message>
        <source>show e&amp;xpected</source>
        <translation>Er&amp;wartetes zeigen</translation>
    </message>
    <message>
        <source>No readings are planned yet.</source>
        <translation>Noch keine Messwerte geplant.</translation>
    </message>
</context>
<context>
    <name>ReadingWords</name>
    <message>
        <source>{number} of {count}: {name}</source>
        <translation>{number} von {count}: {name}</translation>
    </message>
    <message>
        <source>Kept {name}</source>
        <translation>Behalten, {name}</translation>
    </message>
    <message>
        <source>Kept {name}: {reading} {unit}</source>
        <translation>Behalten, {name}: {reading} {unit}</translation>
    </message>
    <message>
        <source>{kept}, expected {expected}</source>
        <translation>{kept}, erwartet {expected}</translation>
    </message>
    <message>
        <source>{echo}. All {count} readings are in.</source>
        <translation>{echo}. Alle {count} Messwerte sind da.</translation>
    </message>
    <message>
        <source>{text} came twice at once and was taken once.</source>
        <translation>{text} kam zweimal zugleich und wurde einmal übernommen.</translation>
    </message>
    <message>
        <source>Excluded: {reason}</source>
        <translation>Ausgeschlossen: {reason}</translation>
    </message>
    <message>
        <source>Kept; hidden until all judges have scored. Type it anew to change it.</source>
        <translation>Behalten; verdeckt, bis alle Bewerter bewertet haben. Zum Ändern neu eingeben.</translation>
    </message>
    <message>
        <source>Nothing is expected here yet.</source>
        <translation>Hier wird noch nichts erwartet.</translation>
    </message>
    <message>
        <source>Expected {expected}</source>
        <translation>Erwartet {expected}</translation>
    </message>
    <message>
        <source>Keep {reading}  (Enter)</source>
        <translation>{reading} behalten  (Enter)</translation>
    </message>
    <message>
        <source>{reading} mm  (Alt+{digit})</source>
        <translation>{reading} mm  (Alt+{digit})</translation>
    </message>
    <message>
        <source>Enter keeps, goes on   ↑ back   * skip   / flag   + Enter again</source>
        <translation>Enter behält, geht weiter   ↑ zurück   * überspringen   / kennzeichnen   + Enter noch einmal</translation>
    </message>
    <message>
        <source>Enter keeps, goes on   − back   * skip   / flag   + again</source>
        <translation>Enter behält, geht weiter   −&#xa0;zurück   *&#xa0;überspringen   /&#xa0;kennzeichnen   +&#xa0;noch&#xa0;einmal</translation>
    </message>
    <message>
        <source>reading {number}</source>
        <translation>Messwert {number}</translation>
    </message>
    <message>
        <source>nominal</source>
        <translation>Nennmaß</translation>
    </message>
    <message>
        <source>{name}, {word} {nominal} {unit}</source>
        <translation>{name}, {word} {nominal} {unit}</translation>
    </message>
</context>
<context>
    <name>ReadingsModel</name>
    <message>
        <source>{column}, row {row}</source>
        <translation>{column}, Zeile {row}</translation>
    </message>
    <message>
        <source>answer, row {row}</source>
        <translation>Antwort, Zeile {row}</translation>
    </message>
    <message>
        <source>exclude row {row}</source>
        <translation>Zeile {row} ausschließen</translation>
    </message>
    <message>
        <source>include row {row}</source>
        <translation>Zeile {row} einschließen</translation>
    </message>
    <message>
        <source>other rows</source>
        <translation>andere Zeilen</translation>
    </message>
    <message>
        <source>clear</source>
        <translation>leeren</translation>
    </message>
    <message>
        <source>insert row {row}</source>
        <translation>Zeile {row} einfügen</translation>
    </message>
    <message>
        <source>remove rows</source>
        <translation>Zeilen entfernen</translation>
    </message>
    <message>
        <source>paste</source>
        <translation>einfügen</translation>
    </message>
</context>
<context>
    <name>ReadingsTable</name>
    <message>
        <source>Readings</source>
        <translation>Messwerte</translation>
    </message>
    <message>
        <source>Copy</source>
        <translation>Kopieren</translation>
    </message>
    <message>
        <source>Paste</source>
        <translation>Einfügen</translation>
    </message>
    <message>
        <source>Clear</source>
        <translation>Leeren</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Wiederherstellen</translation>
    </message>
    <message>
        <source>Exclude or include…</source>
        <translation>Ausschließen oder einschließen…</translation>
    </message>
    <message>
        <source>Read again in a further row</source>
        <translation>In weiterer Zeile erneut messen</translation>
    </message>
    <message>
        <source>Remove rows</source>
        <translation>Zeilen entfernen</translation>
    </message>
</context>
<context>
    <name>ReasonBar</name>
    <message>
        <source>Reason for leaving the reading out</source>
        <translation>Grund für das Auslassen des Messwerts</translation>
    </message>
    <message>
        <source>its number or other words, then Enter</source>
        <translation>seine Nummer oder andere Worte, dann Enter</translation>
    </message>
    <message>
        <source>slipped</source>
        <translation>abgerutscht</translation>
    </message>
    <message>
        <source>chip or string</source>
        <translation>Span oder Faden</translation>
    </message>
    <message>
        <source>wrong feature</source>
        <translation>falsche Stelle</translation>
    </message>
    <message>
        <source>damaged</source>
        <translation>beschädigt</translation>
    </message>
    <message>
        <source>Leave reading {row} out, because</source>
        <translation>Messwert {row} auslassen, weil</translation>
    </message>
    <message>
        <source>Leave reading {row} out: a reason is needed</source>
        <translation>Messwert {row} auslassen: ein Grund ist nötig</translation>
    </message>
</context>
<context>
    <name>Refusal</name>
    <message>
        <source>The database cannot be opened</source>
        <translation>Die Datenbank lässt sich nicht öffnen</translation>
    </message>
    <message>
        <source>Nothing was changed or replaced.</source>
        <translation>Nichts wurde geändert oder ersetzt.</translation>
    </message>
    <message>
        <source>&amp;Try again</source>
        <translation>Erneut &amp;versuchen</translation>
    </message>
    <message>
        <source>Open &amp;another file…</source>
        <translation>&amp;Andere Datei öffnen…</translation>
    </message>
    <message>
        <source>Copies of this database</source>
        <translation>Sicherungskopien dieser Datenbank</translation>
    </message>
    <message>
        <source>&amp;Restore this copy</source>
        <translation>Diese Kopie &amp;wiederherstellen</translation>
    </message>
    <message>
        <source>The file itself is set aside beside its copies first.</source>
        <translation>Die Datei selbst wird vorher neben ihren Kopien abgelegt.</translation>
    </message>
    <message>
        <source>Open a database, or type the name of a new one</source>
        <translation>Datenbank öffnen oder den Namen einer neuen eingeben</translation>
    </message>
</context>
<context>
    <name>ReportButton</name>
    <message>
        <source>This trial, PDF…</source>
        <translation>Dieser Versuch, PDF…</translation>
    </message>
    <message>
        <source>This trial, CSV…</source>
        <translation>Dieser Versuch, CSV…</translation>
    </message>
    <message>
        <source>Newest kept of machine and lot, PDF…</source>
        <translation>Neuester behaltener von Maschine und Charge, PDF…</translation>
    </message>
    <message>
        <source>Newest kept of machine and lot, CSV…</source>
        <translation>Neuester behaltener von Maschine und Charge, CSV…</translation>
    </message>
    <message>
        <source>Promise to a customer, PDF…</source>
        <translation>Zusage an einen Kunden, PDF…</translation>
    </message>
    <message>
        <source>Promise to a customer, CSV…</source>
        <translation>Zusage an einen Kunden, CSV…</translation>
    </message>
    <message>
        <source>Newest kept promise, PDF…</source>
        <translation>Neueste behaltene Zusage, PDF…</translation>
    </message>
    <message>
        <source>Newest kept promise, CSV…</source>
        <translation>Neueste behaltene Zusage, CSV…</translation>
    </message>
    <message>
        <source>Newest size trial, PDF…</source>
        <translation>Neuester Maßversuch, PDF…</translation>
    </message>
    <message>
        <source>Newest size trial, CSV…</source>
        <translation>Neuester Maßversuch, CSV…</translation>
    </message>
    <message>
        <source>Machine card, PDF…</source>
        <translation>Maschinenkarte, PDF…</translation>
    </message>
    <message>
        <source>Machine card, CSV…</source>
        <translation>Maschinenkarte, CSV…</translation>
    </message>
    <message>
        <source>Label for the machine, PDF…</source>
        <translation>Etikett für die Maschine, PDF…</translation>
    </message>
    <message>
        <source>Report written: {path}</source>
        <translation>Bericht geschrieben: {path}</translation>
    </message>
    <message>
        <source>{path} was not written: nothing is kept to report on, or the folder takes no file.</source>
        <translation>{path} wurde nicht geschrieben: Es ist nichts behalten, worüber zu berichten wäre, oder der Ordner nimmt keine Datei an.</translation>
    </message>
    <message>
        <source>Save the report</source>
        <translation>Bericht speichern</translation>
    </message>
</context>
<context>
    <name>ReportCard</name>
    <message>
        <source>Report</source>
        <translation>Bericht</translation>
    </message>
    <message>
        <source>What a check, an import or a move found stands here, line by line.</source>
        <translation>Was Prüfung, Einlesen oder Umzug ergeben haben, steht hier Zeile für Zeile.</translation>
    </message>
    <message>
        <source>Sto&amp;p</source>
        <translation>An&amp;halten</translation>
    </message>
</context>
<context>
    <name>ResultCard</name>
    <message>
        <source>No verdict yet. It appears as soon as the readings tell something.</source>
        <translation>Noch kein Urteil. Es erscheint, sobald die Messwerte etwas aussagen.</translation>
    </message>
    <message>
        <source>Verdict</source>
        <translation>Urteil</translation>
    </message>
    <message>
        <source>Copy text</source>
        <translation>Text kopieren</translation>
    </message>
    <message>
        <source>Keep trial   Ctrl+S</source>
        <translation>Versuch behalten   Strg+S</translation>
    </message>
    <message>
        <source>Do not touch: {what}</source>
        <translation>Nicht anfassen: {what}</translation>
    </message>
    <message>
        <source>Keep trial</source>
        <translation>Versuch behalten</translation>
    </message>
</context>
<context>
    <name>ReversalForm</name>
    <message>
        <source>Caution: axes start without warning; lowest speed, hands off. Remove the indicator before homing.</source>
        <translation>Vorsicht: Achsen laufen ohne Warnung an; kleinste Geschwindigkeit, Hände weg. Messuhr vor der Referenzfahrt abnehmen.</translation>
    </message>
    <message>
        <source>Quick cycle</source>
        <translation>Kurzzyklus</translation>
    </message>
    <message>
        <source>Full cycle, ISO 230-2</source>
        <translation>Vollzyklus, ISO 230-2</translation>
    </message>
    <message>
        <source>Lost-motion curve</source>
        <translation>Kurve des toten Gangs</translation>
    </message>
    <message>
        <source>Push, for stiffness</source>
        <translation>Drücken, für Steifigkeit</translation>
    </message>
    <message>
        <source>Ax&amp;is</source>
        <translation>A&amp;chse</translation>
    </message>
    <message>
        <source>Read &amp;by</source>
        <translation>Ver&amp;fahren</translation>
    </message>
    <message>
        <source>&amp;Dial reads to</source>
        <translation>Mess&amp;uhr zeigt auf</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>Push &amp;with</source>
        <translation>&amp;Drücken mit</translation>
    </message>
    <message>
        <source>N</source>
        <translation>N</translation>
    </message>
    <message>
        <source>&amp;Scale true to ±</source>
        <translation>&amp;Kraftmesser auf ±</translation>
    </message>
    <message>
        <source>Add a &amp;reading</source>
        <translation>Messwert &amp;hinzufügen</translation>
    </message>
    <message>
        <source>Come from {side}: move {axis} towards {sign} by 2 mm or more, stop at the target.</source>
        <translation>Von {side} kommen: {axis} um 2 mm oder mehr Richtung {sign} fahren, am Ziel anhalten.</translation>
    </message>
    <message>
        <source>sideways to {axis}</source>
        <translation>quer zu {axis}</translation>
    </message>
    <message>
        <source>along {axis}</source>
        <translation>entlang {axis}</translation>
    </message>
    <message>
        <source>Motors hold, no program runs: push {way} once, let go, read at rest.</source>
        <translation>Motoren halten, kein Programm läuft: einmal {way} drücken, loslassen, in Ruhe ablesen.</translation>
    </message>
    <message>
        <source>Push {way} again, the same way; hold the force and read.</source>
        <translation>Noch einmal {way} drücken, gleiche Richtung; Kraft halten und ablesen.</translation>
    </message>
    <message>
        <source>Move {axis} one way by 2 mm, stop, read; then step back the other way.</source>
        <translation>{axis} um 2 mm in eine Richtung fahren, anhalten, ablesen; dann schrittweise zurück.</translation>
    </message>
    <message>
        <source>Step {axis} on, all steps one way: {sum} mm since the turn.</source>
        <translation>{axis} weiter schrittweise, alle Schritte in eine Richtung: {sum} mm seit der Umkehr.</translation>
    </message>
</context>
<context>
    <name>ReversalPage</name>
    <message>
        <source>Reversal</source>
        <translation>Umkehrspanne</translation>
    </message>
    <message>
        <source>No pair yet. Come to the same target from either side and read the dial each time.</source>
        <translation>Noch kein Paar. Dasselbe Ziel von beiden Seiten anfahren und jedes Mal die Messuhr ablesen.</translation>
    </message>
    <message>
        <source>Readings from either side</source>
        <translation>Messwerte von beiden Seiten</translation>
    </message>
    <message>
        <source>Stands out from the other pairs of its place: read it again.</source>
        <translation>Fällt gegenüber den anderen Paaren seiner Stelle auf: erneut messen.</translation>
    </message>
    <message>
        <source>Read by another way: it does not count here.</source>
        <translation>Mit anderem Verfahren gemessen: zählt hier nicht.</translation>
    </message>
</context>
<context>
    <name>RingingForm</name>
    <message>
        <source>Speed
mm/s</source>
        <translation>Geschw.
mm/s</translation>
    </message>
    <message>
        <source>Crests</source>
        <translation>Wellenberge</translation>
    </message>
    <message>
        <source>Over
mm</source>
        <translation>Über
mm</translation>
    </message>
    <message>
        <source>First
µm</source>
        <translation>Erster
µm</translation>
    </message>
    <message>
        <source>Last
µm</source>
        <translation>Letzter
µm</translation>
    </message>
    <message>
        <source>Hz</source>
        <translation>Hz</translation>
    </message>
    <message>
        <source>Add a &amp;ripple</source>
        <translation>&amp;Welle hinzufügen</translation>
    </message>
    <message>
        <source>Read a lo&amp;g…</source>
        <translation>&amp;Aufzeichnung einlesen…</translation>
    </message>
    <message>
        <source>Fix an accelerometer to the carriage or the bed, shake the axis with quick moves to and fro, read its log: time in s and acceleration.</source>
        <translation>Beschleunigungsaufnehmer am Schlitten oder am Bett befestigen, die Achse schnell hin und her bewegen, seine Aufzeichnung einlesen: Zeit in s und Beschleunigung.</translation>
    </message>
    <message>
        <source>Caution: quick moves start without warning. Hands, hair, cables out of the travel, hand on the switch, stop at the first lost step; nothing near what is hot. Local rules come first.</source>
        <translation>Vorsicht: Schnelle Bewegungen beginnen ohne Warnung. Hände, Haare, Kabel aus dem Verfahrweg, Hand am Schalter, beim ersten verlorenen Schritt anhalten; nichts in die Nähe heißer Teile. Örtliche Regeln gehen vor.</translation>
    </message>
    <message>
        <source>Ripples</source>
        <translation>Wellen</translation>
    </message>
    <message>
        <source>Log</source>
        <translation>Aufzeichnung</translation>
    </message>
    <message>
        <source>Axis</source>
        <translation>Achse</translation>
    </message>
    <message>
        <source>Read &amp;by</source>
        <translation>Ver&amp;fahren</translation>
    </message>
    <message>
        <source>&amp;Part on the bed</source>
        <translation>&amp;Teil auf dem Bett</translation>
    </message>
    <message>
        <source>g</source>
        <translation>g</translation>
    </message>
    <message>
        <source>Print a&amp;t</source>
        <translation>Dr&amp;uck mit</translation>
    </message>
    <message>
        <source>mm/s</source>
        <translation>mm/s</translation>
    </message>
    <message>
        <source>&amp;One end, 1 u</source>
        <translation>Ein Ende, &amp;1 u</translation>
    </message>
    <message>
        <source>Row {row}: type the speed; without it this distance is not read.</source>
        <translation>Zeile {row}: die Geschwindigkeit eingeben; ohne sie wird dieser Abstand nicht gelesen.</translation>
    </message>
    <message>
        <source>Row {row}: count the crests and type how many; without the count it is not read.</source>
        <translation>Zeile {row}: die Wellenberge zählen und ihre Anzahl eingeben; ohne sie wird die Zeile nicht gelesen.</translation>
    </message>
    <message>
        <source>Row {row}: crests are counted whole; {count} lies between two.</source>
        <translation>Zeile {row}: Wellenberge werden ganz gezählt; {count} liegt zwischen zweien.</translation>
    </message>
    <message>
        <source>mm/s²</source>
        <translation>mm/s²</translation>
    </message>
    <message>
        <source>A wall after a sharp corner, for each speed: count from crest to crest, the first as 0, type the count; measure from it to the last. Their heights tell the damping.</source>
        <translation>Eine Wand nach scharfer Ecke, je Geschwindigkeit: Wellenberge zählen, den ersten als 0, Anzahl eingeben; von ihm bis zum letzten messen. Ihre Höhen ergeben die Dämpfung.</translation>
    </message>
    <message>
        <source>Ma&amp;chine up to</source>
        <translation>Mas&amp;chine bis</translation>
    </message>
    <message>
        <source>&amp;Seen from</source>
        <translation>&amp;Sichtbar ab</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>Roller &amp;diameter</source>
        <translation>&amp;Rollendurchm.</translation>
    </message>
</context>
<context>
    <name>RingingPage</name>
    <message>
        <source>Ringing</source>
        <translation>Nachschwingen</translation>
    </message>
    <message>
        <source>Readings</source>
        <translation>Messwerte</translation>
    </message>
    <message>
        <source>Acceleration</source>
        <translation>Beschleunigung</translation>
    </message>
    <message>
        <source>Picture</source>
        <translation>Bild</translation>
    </message>
    <message>
        <source>P&amp;icture</source>
        <translation>Bil&amp;d</translation>
    </message>
    <message>
        <source>log</source>
        <translation>Aufzeichnung</translation>
    </message>
    <message>
        <source>{name} is too large to be stored with the trial: its peaks are kept, its samples are not.</source>
        <translation>{name} ist zu groß, um mit dem Versuch gespeichert zu werden: Seine Spitzen werden behalten, die Abtastwerte nicht.</translation>
    </message>
    <message>
        <source>CSV (*.csv *.txt);;All (*)</source>
        <translation>CSV (*.csv *.txt);;Alle (*)</translation>
    </message>
    <message>
        <source>Read a log</source>
        <translation>Aufzeichnung einlesen</translation>
    </message>
    <message>
        <source>No log yet. Read one in two columns, time in s and acceleration, taken while the axis shakes.</source>
        <translation>Noch keine Aufzeichnung. Eine mit zwei Spalten einlesen, Zeit in s und Beschleunigung, aufgenommen bei bewegter Achse.</translation>
    </message>
    <message>
        <source>No ripple yet. Count crests on a wall after a corner, at two speeds or three.</source>
        <translation>Noch keine Welle. An einer Wand nach einer Ecke die Wellenberge zählen, bei zwei oder drei Geschwindigkeiten.</translation>
    </message>
    <message>
        <source>Spectrum of the log</source>
        <translation>Spektrum der Aufzeichnung</translation>
    </message>
    <message>
        <source>Wavelength</source>
        <translation>Wellenlänge</translation>
    </message>
</context>
<context>
    <name>Safekeeper</name>
    <message>
        <source>What was typed while the database was away is stored now, in the open trials of its pages.</source>
        <translation>Was ohne Datenbank eingegeben wurde, ist jetzt gespeichert: in den offenen Versuchen seiner Seiten.</translation>
    </message>
    <message>
        <source>The copy of the day could not be made: {why}</source>
        <translation>Die Sicherungskopie des Tages konnte nicht erstellt werden: {why}</translation>
    </message>
</context>
<context>
    <name>ScoreForm</name>
    <message>
        <source>Specimen</source>
        <translation>Probestück</translation>
    </message>
    <message>
        <source>Judge</source>
        <translation>Bewerter</translation>
    </message>
    <message>
        <source>Score</source>
        <translation>Punkte</translation>
    </message>
    <message>
        <source>Show the s&amp;teps</source>
        <translation>Stufen &amp;zeigen</translation>
    </message>
    <message>
        <source>Anot&amp;her set of pieces</source>
        <translation>&amp;Weiterer Satz Stücke</translation>
    </message>
</context>
<context>
    <name>ScorePage</name>
    <message>
        <source>Hidden until all pieces are scored, so that nobody is led by it; “Show the steps” shows it now.</source>
        <translation>Verborgen, bis alle Stücke bewertet sind, damit sich niemand davon leiten lässt; „Stufen zeigen“ zeigt es sofort.</translation>
    </message>
    <message>
        <source>Score or exclude every piece, or press “Show the steps”; then keep the trial.</source>
        <translation>Jedes Stück bewerten oder ausschließen oder „Stufen zeigen“ drücken; dann den Versuch behalten.</translation>
    </message>
    <message>
        <source>judge {judge}: {pieces}</source>
        <translation>Bewerter {judge}: {pieces}</translation>
    </message>
    <message>
        <source>Picture and verdict stay hidden so that nobody is led by them: they show when all rows are scored or excluded, or with “Show the steps”.</source>
        <translation>Bild und Urteil bleiben verborgen, damit sich niemand davon leiten lässt: Sie erscheinen, wenn alle Zeilen bewertet oder ausgeschlossen sind, oder mit „Stufen zeigen“.</translation>
    </message>
    <message>
        <source>Still to be scored:</source>
        <translation>Noch zu bewerten:</translation>
    </message>
</context>
<context>
    <name>SectionSketch</name>
    <message>
        <source>Sketch of the cross-section</source>
        <translation>Skizze des Querschnitts</translation>
    </message>
    <message>
        <source>{first} by {second} mm, deviations drawn {factor} times</source>
        <translation>{first} mal {second} mm, Abweichungen {factor}-fach gezeichnet</translation>
    </message>
    <message>
        <source>Now at 90° to it.</source>
        <translation>Jetzt um 90° dazu.</translation>
    </message>
    <message>
        <source>Turn it until it reads most.</source>
        <translation>Drehen, bis der größte Wert erscheint.</translation>
    </message>
</context>
<context>
    <name>SettingsDesk</name>
    <message>
        <source>Template of {name} saved.</source>
        <translation>Vorlage von {name} gespeichert.</translation>
    </message>
    <message>
        <source>Written down: the controller agrees with what is in force.</source>
        <translation>Festgehalten: Die Steuerung stimmt mit dem Gültigen überein.</translation>
    </message>
</context>
<context>
    <name>SettingsPane</name>
    <message>
        <source>Nothing is in force here yet: choose a machine above; kept trials and its parts set the values.</source>
        <translation>Hier ist noch nichts gültig: oben eine Maschine wählen; behaltene Versuche und ihre Teile setzen die Werte.</translation>
    </message>
    <message>
        <source>In force</source>
        <translation>Gültig</translation>
    </message>
    <message>
        <source>Copy &amp;lines</source>
        <translation>&amp;Zeilen kopieren</translation>
    </message>
    <message>
        <source>&amp;Save the template</source>
        <translation>Vorlage &amp;speichern</translation>
    </message>
    <message>
        <source>&amp;Compare</source>
        <translation>&amp;Vergleichen</translation>
    </message>
    <message>
        <source>&amp;Write down: compared, it agrees</source>
        <translation>&amp;Festhalten: verglichen, stimmt überein</translation>
    </message>
    <message>
        <source>For the slicing program</source>
        <translation>Für die Druckaufbereitung</translation>
    </message>
    <message>
        <source>Lines for the controller</source>
        <translation>Zeilen für die Steuerung</translation>
    </message>
    <message>
        <source>Template of this machine</source>
        <translation>Vorlage dieser Maschine</translation>
    </message>
    <message>
        <source>Listing of the controller</source>
        <translation>Auflistung der Steuerung</translation>
    </message>
    <message>
        <source>Paste here what the controller answers when asked for its settings.</source>
        <translation>Hier einfügen, was die Steuerung auf die Frage nach ihren Einstellungen antwortet.</translation>
    </message>
    <message>
        <source>Read each line before you send it: a controller does what it is told, at once.</source>
        <translation>Jede Zeile vor dem Senden lesen: Eine Steuerung tut sofort, was man ihr sagt.</translation>
    </message>
    <message>
        <source>One line a setting: its name, a colon, the command with {value} in it.</source>
        <translation>Eine Zeile je Einstellung: ihr Name, ein Doppelpunkt, der Befehl mit {value} darin.</translation>
    </message>
    <message>
        <source>Template</source>
        <translation>Vorlage</translation>
    </message>
    <message>
        <source>Compare a listing</source>
        <translation>Auflistung vergleichen</translation>
    </message>
</context>
<context>
    <name>ShopSplitPage</name>
    <message>
        <source>Shop split</source>
        <translation>Werkstattaufteilung</translation>
    </message>
    <message>
        <source>Machines and lots</source>
        <translation>Maschinen und Chargen</translation>
    </message>
    <message>
        <source>Nothing to tell apart yet.</source>
        <translation>Noch nichts zu unterscheiden.</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>Share, %</source>
        <translation>Anteil, %</translation>
    </message>
    <message>
        <source>X less Y, %</source>
        <translation>X minus Y, %</translation>
    </message>
    <message>
        <source>Prints</source>
        <translation>Drucke</translation>
    </message>
    <message>
        <source>Shares in numbers</source>
        <translation>Anteile in Zahlen</translation>
    </message>
    <message>
        <source>What the prints say</source>
        <translation>Was die Drucke sagen</translation>
    </message>
    <message>
        <source>Re&amp;port</source>
        <translation>&amp;Bericht</translation>
    </message>
    <message>
        <source>Choose a machine and a lot above; their shares are kept.</source>
        <translation>Oben eine Maschine und eine Charge wählen; ihre Anteile werden behalten.</translation>
    </message>
    <message>
        <source>A&amp;xis</source>
        <translation>A&amp;chse</translation>
    </message>
    <message>
        <source>&amp;Tolerance</source>
        <translation>&amp;Toleranz</translation>
    </message>
</context>
<context>
    <name>Signature</name>
    <message>
        <source>who is at work? asked once</source>
        <translation>wer arbeitet hier? einmal gefragt</translation>
    </message>
    <message>
        <source>Who is at work here, asked once</source>
        <translation>Wer arbeitet hier, wird einmal gefragt</translation>
    </message>
    <message>
        <source>Signed: {name}.</source>
        <translation>Gezeichnet: {name}.</translation>
    </message>
</context>
<context>
    <name>SizeErrorPage</name>
    <message>
        <source>Size error</source>
        <translation>Maßabweichung</translation>
    </message>
    <message>
        <source>Ax&amp;is shown</source>
        <translation>Ange&amp;zeigte Achse</translation>
    </message>
    <message>
        <source>Axis shown</source>
        <translation>Angezeigte Achse</translation>
    </message>
    <message>
        <source>No readings yet. Type the first one at the left: it appears here at once.</source>
        <translation>Noch keine Messwerte. Den ersten links eingeben: Er erscheint hier sofort.</translation>
    </message>
    <message>
        <source>Error against length</source>
        <translation>Abweichung über der Länge</translation>
    </message>
    <message>
        <source>Stands out from the others: read it again, and one ordinary gauge with it.</source>
        <translation>Fällt gegenüber den anderen auf: erneut messen, dazu eine gewöhnliche Messstelle.</translation>
    </message>
</context>
<context>
    <name>SizeForm</name>
    <message>
        <source>&amp;Piece</source>
        <translation>&amp;Prüfstück</translation>
    </message>
    <message>
        <source>&amp;Tolerance, ISO</source>
        <translation>&amp;Toleranz, ISO</translation>
    </message>
    <message>
        <source>Part tempe&amp;rature</source>
        <translation>Teiletempe&amp;ratur</translation>
    </message>
    <message>
        <source>°C</source>
        <translation>°C</translation>
    </message>
    <message>
        <source>Add a &amp;length</source>
        <translation>&amp;Länge hinzufügen</translation>
    </message>
    <message>
        <source>Own lengths</source>
        <translation>Eigene Längen</translation>
    </message>
</context>
<context>
    <name>SkewPane</name>
    <message>
        <source>Angle above 0: {second} leans towards +{first}, and diagonal 1 (from −− to ++) is the long one.</source>
        <translation>Winkel über 0: {second} neigt sich nach +{first}, und Diagonale 1 (von −− nach ++) ist die lange.</translation>
    </message>
    <message>
        <source>The angle is drawn {factor:.0f} times.</source>
        <translation>Der Winkel ist {factor:.0f}-fach gezeichnet.</translation>
    </message>
    <message>
        <source>Next: {what}</source>
        <translation>Als Nächstes: {what}</translation>
    </message>
</context>
<context>
    <name>SpeedForm</name>
    <message>
        <source>Level</source>
        <translation>Stufe</translation>
    </message>
    <message>
        <source>Speed</source>
        <translation>Geschwindigkeit</translation>
    </message>
    <message>
        <source>Acceleration</source>
        <translation>Beschleunigung</translation>
    </message>
    <message>
        <source>Half speed</source>
        <translation>Halbes Tempo</translation>
    </message>
    <message>
        <source>Tr&amp;y</source>
        <translation>Vers&amp;uch mit</translation>
    </message>
    <message>
        <source>&amp;Slowest</source>
        <translation>&amp;Kleinste</translation>
    </message>
    <message>
        <source>&amp;Fastest</source>
        <translation>&amp;Größte</translation>
    </message>
    <message>
        <source>Machine up t&amp;o</source>
        <translation>Maschine &amp;bis</translation>
    </message>
    <message>
        <source>Score as&amp;ked</source>
        <translation>&amp;Punkte verlangt</translation>
    </message>
    <message>
        <source>Accele&amp;ration</source>
        <translation>Besch&amp;leunigung</translation>
    </message>
    <message>
        <source>Usual strai&amp;ght</source>
        <translation>Übl. Ge&amp;rade</translation>
    </message>
    <message>
        <source>&amp;Corner within</source>
        <translation>E&amp;cke innerhalb</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>s</source>
        <translation>s</translation>
    </message>
    <message>
        <source>Layer at least</source>
        <translation>Schicht mind.</translation>
    </message>
    <message>
        <source>&amp;Path of a layer</source>
        <translation>Weg der Sc&amp;hicht</translation>
    </message>
    <message>
        <source>Caution: fast moves start without warning. Hands, hair, cables out of the travel, hand on the switch, stop at the first lost step. Hot nozzle; local rules come first.</source>
        <translation>Vorsicht: Schnelle Bewegungen beginnen ohne Warnung. Hände, Haare, Kabel aus dem Verfahrweg, Hand am Schalter, beim ersten verlorenen Schritt anhalten. Heiße Düse; örtliche Regeln gehen vor.</translation>
    </message>
    <message>
        <source>Time a fi&amp;le…</source>
        <translation>Zei&amp;t einer Datei…</translation>
    </message>
    <message>
        <source>Type the length of all lines of the shortest layer, or time a file: it tells its layers.</source>
        <translation>Die Länge aller Linien der kürzesten Schicht eintippen oder die Zeit einer Datei rechnen lassen: Sie nennt ihre Schichten.</translation>
    </message>
    <message>
        <source>The same part: as usual; at half speed and half acceleration; at full speed with half the layer height; at full speed with a second copy on the bed. Score the defect: 4 none.</source>
        <translation>Dasselbe Teil: wie üblich; mit halber Geschwindigkeit und halber Beschleunigung; mit voller Geschwindigkeit und halber Schichthöhe; mit voller Geschwindigkeit und einem zweiten Exemplar auf dem Bett. Den Fehler bewerten: 4 keiner.</translation>
    </message>
    <message>
        <source>Corners, a raised letter, a hole for each level, nothing else changed. Home before and after: a shift fails the level.</source>
        <translation>Ecken, ein erhabener Buchstabe, ein Loch je Stufe, sonst nichts geändert. Vorher und nachher Referenzfahrt: Bei einem Versatz gilt die Stufe als nicht bestanden.</translation>
    </message>
    <message>
        <source>Spee&amp;d</source>
        <translation>Ge&amp;schw.</translation>
    </message>
</context>
<context>
    <name>SpeedPage</name>
    <message>
        <source>Speed</source>
        <translation>Geschwindigkeit</translation>
    </message>
    <message>
        <source>Score by time</source>
        <translation>Punkte über Zeit</translation>
    </message>
    <message>
        <source>Time by level</source>
        <translation>Zeit über Stufe</translation>
    </message>
    <message>
        <source>Rate</source>
        <translation>Rate</translation>
    </message>
    <message>
        <source>Picture</source>
        <translation>Bild</translation>
    </message>
    <message>
        <source>P&amp;icture</source>
        <translation>Bil&amp;d</translation>
    </message>
    <message>
        <source>No score yet. Print the levels, mark the pieces; two people score them, each alone and blind.</source>
        <translation>Noch keine Bewertung. Die Stufen drucken, die Stücke kennzeichnen; zwei Personen bewerten sie, jede für sich und blind.</translation>
    </message>
    <message>
        <source>Score against time</source>
        <translation>Punkte über der Zeit</translation>
    </message>
    <message>
        <source>Of another trial: it does not count here.</source>
        <translation>Von einem anderen Versuch: zählt hier nicht.</translation>
    </message>
    <message>
        <source>G-code (*.gcode *.gco *.g *.nc);;All (*)</source>
        <translation>G-Code (*.gcode *.gco *.g *.nc);;Alle (*)</translation>
    </message>
    <message>
        <source>Time a file</source>
        <translation>Zeit einer Datei</translation>
    </message>
</context>
<context>
    <name>SquareForm</name>
    <message>
        <source>Pillars</source>
        <translation>Säulen</translation>
    </message>
    <message>
        <source>Drawn lines</source>
        <translation>Linien</translation>
    </message>
    <message>
        <source>Square</source>
        <translation>Winkel</translation>
    </message>
    <message>
        <source>as found</source>
        <translation>unverändert</translation>
    </message>
    <message>
        <source>squared</source>
        <translation>ausgerichtet</translation>
    </message>
    <message>
        <source>terms set</source>
        <translation>Term gesetzt</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>Read &amp;by</source>
        <translation>Ver&amp;fahren</translation>
    </message>
    <message>
        <source>Axis pa&amp;ir</source>
        <translation>Achs&amp;paar</translation>
    </message>
    <message>
        <source>F&amp;rame</source>
        <translation>&amp;Rahmen</translation>
    </message>
    <message>
        <source>Side, &amp;first axis</source>
        <translation>Seite, &amp;1. Achse</translation>
    </message>
    <message>
        <source>Side, &amp;second</source>
        <translation>Seite, &amp;2. Achse</translation>
    </message>
    <message>
        <source>Frame &amp;width</source>
        <translation>Rahmen&amp;breite</translation>
    </message>
    <message>
        <source>&amp;Longest part</source>
        <translation>&amp;Längstes Teil</translation>
    </message>
    <message>
        <source>&amp;Tolerance ±</source>
        <translation>&amp;Toleranz ±</translation>
    </message>
    <message>
        <source>Term in f&amp;orce</source>
        <translation>&amp;Gültiger Term</translation>
    </message>
    <message>
        <source>Caution: let the piece cool, off a hot bed. Jaws are sharp.</source>
        <translation>Vorsicht: das Stück abkühlen lassen, weg vom heißen Bett. Messschenkel sind scharf.</translation>
    </message>
    <message>
        <source>Caution: axes start without warning; hands off.</source>
        <translation>Vorsicht: Achsen laufen ohne Warnung an; Hände weg.</translation>
    </message>
    <message>
        <source>Caution: lowest speed; indicator off before homing.</source>
        <translation>Vorsicht: kleinste Geschwindigkeit; Messuhr vor der Referenzfahrt abnehmen.</translation>
    </message>
</context>
<context>
    <name>SquarenessPage</name>
    <message>
        <source>Squareness</source>
        <translation>Rechtwinkligkeit</translation>
    </message>
    <message>
        <source>The axes, angle enlarged</source>
        <translation>Die Achsen, Winkel vergrößert</translation>
    </message>
    <message>
        <source>Too far from the other readings of this length: read it again.</source>
        <translation>Zu weit weg von den anderen Messwerten dieser Länge: erneut messen.</translation>
    </message>
    <message>
        <source>Read by another method: it does not count here.</source>
        <translation>Mit anderem Verfahren gemessen: zählt hier nicht.</translation>
    </message>
    <message>
        <source>{per_100} in 100 mm</source>
        <translation>{per_100} auf 100 mm</translation>
    </message>
    <message>
        <source>Arrow: bring this side there by {shift} mm.</source>
        <translation>Pfeil: diese Seite dort um {shift} mm dorthin rücken.</translation>
    </message>
    <message>
        <source>{plane}: {degrees}, {per_100} in 100 mm.</source>
        <translation>{plane}: {degrees}, {per_100} auf 100 mm.</translation>
    </message>
</context>
<context>
    <name>StepCard</name>
    <message>
        <source>All in order   Ctrl+S</source>
        <translation>Alles in Ordnung   Strg+S</translation>
    </message>
    <message>
        <source>&amp;Quick check made: it stands</source>
        <translation>&amp;Kurzprüfung gemacht: gilt</translation>
    </message>
    <message>
        <source>&amp;Fault found</source>
        <translation>&amp;Fehler gefunden</translation>
    </message>
    <message>
        <source>Choose a machine above, or add one: the walk leads from its record to a proved machine.</source>
        <translation>Oben eine Maschine wählen oder hinzufügen: Der Gang führt von ihren Stammdaten bis zur verifizierten Maschine.</translation>
    </message>
    <message>
        <source>Setup walk</source>
        <translation>Einrichtungsgang</translation>
    </message>
    <message>
        <source>&amp;Add a machine</source>
        <translation>Maschine hin&amp;zufügen</translation>
    </message>
    <message>
        <source>This step is for one filament lot: choose or add it above.</source>
        <translation>Dieser Schritt gilt für eine Filamentcharge: oben wählen oder hinzufügen.</translation>
    </message>
    <message>
        <source>First</source>
        <translation>Zuerst</translation>
    </message>
    <message>
        <source>&amp;Open the page {page}</source>
        <translation>&amp;Seite {page} öffnen</translation>
    </message>
    <message>
        <source>Take it up a&amp;gain</source>
        <translation>&amp;Wieder aufnehmen</translation>
    </message>
    <message>
        <source>S&amp;kip it, with a reason</source>
        <translation>&amp;Überspringen, mit Grund</translation>
    </message>
    <message>
        <source>It could be done now; others come before it.</source>
        <translation>Er ginge schon jetzt; andere kommen davor.</translation>
    </message>
    <message>
        <source>Do</source>
        <translation>Zu tun</translation>
    </message>
    <message>
        <source>This machine</source>
        <translation>Diese Maschine</translation>
    </message>
    <message>
        <source>Why here</source>
        <translation>Warum hier</translation>
    </message>
    <message>
        <source>Good enough, stop</source>
        <translation>Gut genug, aufhören</translation>
    </message>
</context>
<context>
    <name>StepList</name>
    <message>
        <source>Steps of the walk</source>
        <translation>Schritte des Gangs</translation>
    </message>
</context>
<context>
    <name>StepsModel</name>
    <message>
        <source>Step</source>
        <translation>Stufe</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
</context>
<context>
    <name>StoragePage</name>
    <message>
        <source>Storage</source>
        <translation>Ablage</translation>
    </message>
    <message>
        <source>Making a copy…</source>
        <translation>Sicherungskopie wird erstellt…</translation>
    </message>
    <message>
        <source>Copied to {file}.</source>
        <translation>Kopiert nach {file}.</translation>
    </message>
    <message>
        <source>Restoring…</source>
        <translation>Wird wiederhergestellt…</translation>
    </message>
    <message>
        <source>Restored. What was on record before is in {file}.</source>
        <translation>Wiederhergestellt. Was vorher erfasst war, steht in {file}.</translation>
    </message>
    <message>
        <source>Reading everything…</source>
        <translation>Alles wird gelesen…</translation>
    </message>
    <message>
        <source>Faults were found. Restore a copy that has none, and keep this one for rescue.</source>
        <translation>Fehler gefunden. Eine fehlerfreie Kopie wiederherstellen und diese zur Rettung aufbewahren.</translation>
    </message>
    <message>
        <source>Everything was read; all of it hangs together.</source>
        <translation>Alles wurde gelesen; alles passt zusammen.</translation>
    </message>
    <message>
        <source>Name a new folder for the tables</source>
        <translation>Einen neuen Ordner für die Tabellen benennen</translation>
    </message>
    <message>
        <source>Exporting…</source>
        <translation>Wird ausgegeben…</translation>
    </message>
    <message>
        <source>Name a new file</source>
        <translation>Eine neue Datei benennen</translation>
    </message>
    <message>
        <source>Exported to {file}.</source>
        <translation>Ausgegeben nach {file}.</translation>
    </message>
    <message>
        <source>Choose the about.csv of a folder of tables, or a JSON file</source>
        <translation>Die about.csv eines Tabellenordners oder eine JSON-Datei wählen</translation>
    </message>
    <message>
        <source>Exports (about.csv *.json)</source>
        <translation>Ausgaben (about.csv *.json)</translation>
    </message>
    <message>
        <source>Importing…</source>
        <translation>Wird eingelesen…</translation>
    </message>
    <message>
        <source>&amp;Show it on all pages</source>
        <translation>Auf allen Seiten &amp;zeigen</translation>
    </message>
    <message>
        <source>Moving…</source>
        <translation>Wird umgezogen…</translation>
    </message>
    <message>
        <source>Everything is in the new database too. This window still shows the old one.</source>
        <translation>Alles steht auch in der neuen Datenbank. Dieses Fenster zeigt noch die alte.</translation>
    </message>
    <message>
        <source>&amp;Go on there, now and at every start</source>
        <translation>Dort weitera&amp;rbeiten, jetzt und bei jedem Start</translation>
    </message>
    <message>
        <source>This is the database that you moved to.</source>
        <translation>Dies ist die Datenbank, in die Sie umgezogen sind.</translation>
    </message>
    <message>
        <source>Stopped; nothing was changed.</source>
        <translation>Angehalten; nichts wurde geändert.</translation>
    </message>
</context>
<context>
    <name>StoredPage</name>
    <message>
        <source>Cannot tell yet</source>
        <translation>Lässt sich noch nicht sagen</translation>
    </message>
    <message>
        <source>Still at work; keep it when the result is there.</source>
        <translation>Noch bei der Arbeit; behalten, wenn das Ergebnis da ist.</translation>
    </message>
    <message>
        <source>All that is kept is being read…</source>
        <translation>Alles Behaltene wird gelesen…</translation>
    </message>
    <message>
        <source>Stopped. Go to another page and come back, and it is read anew.</source>
        <translation>Angehalten. Auf eine andere Seite gehen und zurückkommen, dann wird neu gelesen.</translation>
    </message>
</context>
<context>
    <name>ToolpathForm</name>
    <message>
        <source>Tri&amp;al</source>
        <translation>&amp;Versuch</translation>
    </message>
    <message>
        <source>Start text</source>
        <translation>Starttext</translation>
    </message>
    <message>
        <source>End text</source>
        <translation>Endtext</translation>
    </message>
    <message>
        <source>&amp;Keep with the machine</source>
        <translation>Bei der Maschine behalte&amp;n</translation>
    </message>
    <message>
        <source>S&amp;tart text</source>
        <translation>St&amp;arttext</translation>
    </message>
    <message>
        <source>End te&amp;xt</source>
        <translation>Endte&amp;xt</translation>
    </message>
    <message>
        <source>Laid with</source>
        <translation>Gelegt mit</translation>
    </message>
    <message>
        <source>Nothing beyond these is written. The bed is as large as the machine&apos;s travel.</source>
        <translation>Darüber hinaus wird nichts geschrieben. Das Bett ist so groß wie der Verfahrweg der Maschine.</translation>
    </message>
    <message>
        <source>Limits of the machine</source>
        <translation>Grenzen der Maschine</translation>
    </message>
    <message>
        <source>The machine&apos;s own text</source>
        <translation>Eigener Text der Maschine</translation>
    </message>
</context>
<context>
    <name>ToolpathPane</name>
    <message>
        <source>Layer</source>
        <translation>Schicht</translation>
    </message>
    <message>
        <source>&amp;Bed</source>
        <translation>&amp;Bett</translation>
    </message>
    <message>
        <source>Tra&amp;vels</source>
        <translation>Leer&amp;wege</translation>
    </message>
    <message>
        <source>{title}. Parts: {parts}; layers: {layers}; filament: {length} mm.</source>
        <translation>{title}. Teile: {parts}; Schichten: {layers}; Filament: {length} mm.</translation>
    </message>
    <message>
        <source>No path yet.</source>
        <translation>Noch kein Weg.</translation>
    </message>
    <message>
        <source>{part}: {length} mm of filament</source>
        <translation>{part}: {length} mm Filament</translation>
    </message>
    <message>
        <source>No path: see below what stands against it.</source>
        <translation>Kein Weg: Unten steht, was dagegen spricht.</translation>
    </message>
    <message>
        <source>Beads are to scale. Wheel, + and − enlarge; 0 shows all.</source>
        <translation>Raupen maßstäblich. Mausrad, + und − vergrößern; 0 zeigt alles.</translation>
    </message>
    <message>
        <source>{number} of {count}, Z {height} mm</source>
        <translation>{number} von {count}, Z {height} mm</translation>
    </message>
    <message>
        <source>{length} mm</source>
        <translation>{length} mm</translation>
    </message>
</context>
<context>
    <name>ToolpathsPage</name>
    <message>
        <source>Toolpaths</source>
        <translation>Werkzeugwege</translation>
    </message>
    <message>
        <source>Path</source>
        <translation>Weg</translation>
    </message>
    <message>
        <source>Read-back</source>
        <translation>Rückgelesen</translation>
    </message>
    <message>
        <source>Nothing to write yet.</source>
        <translation>Noch nichts zu schreiben.</translation>
    </message>
    <message>
        <source>Save G-code…   Ctrl+S</source>
        <translation>G-Code speichern…   Strg+S</translation>
    </message>
    <message>
        <source>Save G-code</source>
        <translation>G-Code speichern</translation>
    </message>
    <message>
        <source>I have read the &amp;cautions and stay with the machine.</source>
        <translation>I&amp;ch habe die Warnhinweise gelesen und bleibe bei der Maschine.</translation>
    </message>
    <message>
        <source>Cannot be laid:</source>
        <translation>Lässt sich nicht legen:</translation>
    </message>
    <message>
        <source>Save the G-code</source>
        <translation>G-Code speichern</translation>
    </message>
    <message>
        <source>G-code (*.gcode)</source>
        <translation>G-Code (*.gcode)</translation>
    </message>
    <message>
        <source>{path} is written. Read it, start it yourself, and watch the cold lap.</source>
        <translation>{path} ist geschrieben. Lesen, selbst starten und die Kaltrunde beobachten.</translation>
    </message>
    <message>
        <source> The page Mass knows what its path commands.</source>
        <translation> Die Seite Masse weiß, was sein Weg befiehlt.</translation>
    </message>
    <message>
        <source>Type the temperature of the nozzle.</source>
        <translation>Die Düsentemperatur eingeben.</translation>
    </message>
    <message>
        <source>The read-back refuses this path; see why, and mend it.</source>
        <translation>Das Rücklesen lehnt diesen Weg ab; Grund ansehen und beheben.</translation>
    </message>
    <message>
        <source>Read the cautions and tick the box, then save.</source>
        <translation>Warnhinweise lesen, Kästchen ankreuzen, dann speichern.</translation>
    </message>
    <message>
        <source>Choose or add a machine above; the text is kept with it.</source>
        <translation>Oben eine Maschine wählen oder hinzufügen; der Text wird bei ihr behalten.</translation>
    </message>
    <message>
        <source>The text is kept with {name}.</source>
        <translation>Der Text ist bei {name} behalten.</translation>
    </message>
</context>
<context>
    <name>TopPage</name>
    <message>
        <source>Top pads</source>
        <translation>Deckfelder</translation>
    </message>
    <message>
        <source>Pad</source>
        <translation>Feld</translation>
    </message>
    <message>
        <source>Judge</source>
        <translation>Bewerter</translation>
    </message>
    <message>
        <source>Flow %</source>
        <translation>Durchfluss %</translation>
    </message>
    <message>
        <source>Score</source>
        <translation>Punkte</translation>
    </message>
    <message>
        <source>Add a s&amp;core</source>
        <translation>Bewert&amp;ung hinzufügen</translation>
    </message>
    <message>
        <source>No score yet. One person scores all pads, from −5 (gaps) over 0 (closed) to +5 (ridges); then the other one does.</source>
        <translation>Noch keine Bewertung. Eine Person bewertet alle Felder, von −5 (Lücken) über 0 (geschlossen) bis +5 (Wülste); danach die andere.</translation>
    </message>
</context>
<context>
    <name>TrialForm</name>
    <message>
        <source>&amp;New readings</source>
        <translation>&amp;Neue Messwerte</translation>
    </message>
    <message>
        <source>Tri&amp;al</source>
        <translation>&amp;Versuch</translation>
    </message>
    <message>
        <source>Nothing is typed here yet; this one is needed.</source>
        <translation>Hier steht noch nichts; diese Angabe wird gebraucht.</translation>
    </message>
    <message>
        <source>A reading has an open question; answer it, then keep the trial.</source>
        <translation>Zu einem Messwert ist eine Frage offen; erst beantworten, dann den Versuch behalten.</translation>
    </message>
    <message>
        <source>Row {row} cannot be read; mend or clear it, then keep the trial.</source>
        <translation>Zeile {row} ist nicht lesbar; berichtigen oder leeren, dann den Versuch behalten.</translation>
    </message>
    <message>
        <source>Next reading</source>
        <translation>Nächster Messwert</translation>
    </message>
</context>
<context>
    <name>TrialPage</name>
    <message>
        <source>Report</source>
        <translation>Bericht</translation>
    </message>
    <message>
        <source>Kept trials are not changed.</source>
        <translation>Behaltene Versuche werden nicht geändert.</translation>
    </message>
    <message>
        <source>Choose or add a machine above, then keep the trial.</source>
        <translation>Oben eine Maschine wählen oder hinzufügen, dann den Versuch behalten.</translation>
    </message>
    <message>
        <source>Not stored yet, see the line below the page.</source>
        <translation>Noch nicht gespeichert, siehe die Zeile unter der Seite.</translation>
    </message>
    <message>
        <source>Cannot tell yet:</source>
        <translation>Lässt sich noch nicht sagen:</translation>
    </message>
    <message>
        <source>Kept trials are not undone: withdraw one in the logbook.</source>
        <translation>Behaltene Versuche werden nicht rückgängig gemacht: im Logbuch zurückziehen.</translation>
    </message>
</context>
<context>
    <name>TrialPicker</name>
    <message>
        <source>in progress</source>
        <translation>in Arbeit</translation>
    </message>
</context>
<context>
    <name>Undoing</name>
    <message>
        <source>There is nothing to undo on this page.</source>
        <translation>Auf dieser Seite ist nichts rückgängig zu machen.</translation>
    </message>
    <message>
        <source>Undone: {what}.</source>
        <translation>Rückgängig gemacht: {what}.</translation>
    </message>
    <message>
        <source>readings</source>
        <translation>Messwerte</translation>
    </message>
    <message>
        <source>There is nothing to redo on this page.</source>
        <translation>Auf dieser Seite ist nichts zu wiederholen.</translation>
    </message>
    <message>
        <source>Done again: {what}.</source>
        <translation>Wiederholt: {what}.</translation>
    </message>
</context>
<context>
    <name>ViewMenu</name>
    <message>
        <source>View</source>
        <translation>Ansicht</translation>
    </message>
    <message>
        <source>View: language, and unit of lengths</source>
        <translation>Ansicht: Sprache und Einheit der Längen</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Sprache</translation>
    </message>
    <message>
        <source>Lengths</source>
        <translation>Längen</translation>
    </message>
    <message>
        <source>As the system</source>
        <translation>Wie das System</translation>
    </message>
    <message>
        <source>Millimetres (mm)</source>
        <translation>Millimeter (mm)</translation>
    </message>
    <message>
        <source>Inches (in)</source>
        <translation>Zoll (in)</translation>
    </message>
</context>
<context>
    <name>WaitBar</name>
    <message>
        <source>Progress</source>
        <translation>Fortschritt</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
</context>
<context>
    <name>WaitingRoom</name>
    <message>
        <source>What is typed stays on this page only; it cannot be held on this computer either: {why}</source>
        <translation>Eingaben bleiben nur auf dieser Seite; auch auf diesem Rechner lassen sie sich nicht ablegen: {why}</translation>
    </message>
    <message>
        <source>What is typed stays on this page and on this computer, and is sent when the database is back.</source>
        <translation>Eingaben bleiben auf dieser Seite und auf diesem Rechner und werden gesendet, sobald die Datenbank wieder da ist.</translation>
    </message>
    <message>
        <source>The database is back; what was typed meanwhile is stored.</source>
        <translation>Die Datenbank ist wieder da; die Eingaben der Zwischenzeit sind gespeichert.</translation>
    </message>
</context>
<context>
    <name>WalkPage</name>
    <message>
        <source>Walk</source>
        <translation>Gang</translation>
    </message>
    <message>
        <source>Logged.</source>
        <translation>Eingetragen.</translation>
    </message>
</context>
<context>
    <name>WallPage</name>
    <message>
        <source>Wall</source>
        <translation>Wand</translation>
    </message>
    <message>
        <source>Place</source>
        <translation>Stelle</translation>
    </message>
    <message>
        <source>Wall mm</source>
        <translation>Wand mm</translation>
    </message>
    <message>
        <source>Asks for %</source>
        <translation>Verlangt %</translation>
    </message>
    <message>
        <source>Add a pla&amp;ce</source>
        <translation>Stelle hinzuf&amp;ügen</translation>
    </message>
    <message>
        <source>one bead</source>
        <translation>eine Raupe</translation>
    </message>
    <message>
        <source>two beads</source>
        <translation>zwei Raupen</translation>
    </message>
    <message>
        <source>Wall of the &amp;box</source>
        <translation>Wand des &amp;Kastens</translation>
    </message>
    <message>
        <source>&amp;Layers touched</source>
        <translation>&amp;Gefasste Schichten</translation>
    </message>
    <message>
        <source>Layer offsets, &amp;1 sd</source>
        <translation>Schichtversatz, &amp;1 s</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>Spread of the sideways offset of single layers, if you measured it; else leave it empty.</source>
        <translation>Streuung des seitlichen Versatzes einzelner Schichten, falls gemessen; sonst leer lassen.</translation>
    </message>
    <message>
        <source>No wall yet. Let the box cool, then read the middle of each face twice.</source>
        <translation>Noch keine Wand. Den Kasten abkühlen lassen, dann die Mitte jeder Seite zweimal messen.</translation>
    </message>
    <message>
        <source>place</source>
        <translation>Stelle</translation>
    </message>
    <message>
        <source>wall, mm</source>
        <translation>Wand, mm</translation>
    </message>
</context>
<context>
    <name>WeighingCard</name>
    <message>
        <source>Drying and stock</source>
        <translation>Trocknen und Bestand</translation>
    </message>
    <message>
        <source>Caution: heat. Dry below the softening point, never unattended, not in an oven used for food; ventilate.</source>
        <translation>Vorsicht: Hitze. Unterhalb des Erweichungspunkts trocknen, nie unbeaufsichtigt, nicht in einem Ofen für Lebensmittel; lüften.</translation>
    </message>
    <message>
        <source>Weigh with the spool on, before and after. For the stock alone leave “before” empty.</source>
        <translation>Mit Spule wägen, vorher und nachher. Nur für den Bestand „Vorher“ leer lassen.</translation>
    </message>
    <message>
        <source>Be&amp;fore drying</source>
        <translation>&amp;Vor dem Trocknen</translation>
    </message>
    <message>
        <source>No&amp;w, or dried</source>
        <translation>&amp;Jetzt, ggf. getr.</translation>
    </message>
    <message>
        <source>B&amp;alance, 1 u</source>
        <translation>W&amp;aage, 1 u</translation>
    </message>
</context>
<context>
    <name>WhosePage</name>
    <message>
        <source>Whose error</source>
        <translation>Wessen Fehler</translation>
    </message>
    <message>
        <source>Error by cause</source>
        <translation>Abweichung nach Ursache</translation>
    </message>
    <message>
        <source>No kept size trial yet.</source>
        <translation>Noch kein behaltener Maßversuch.</translation>
    </message>
    <message>
        <source>Part</source>
        <translation>Teil</translation>
    </message>
    <message>
        <source>Now, mm</source>
        <translation>Jetzt, mm</translation>
    </message>
    <message>
        <source>After, mm</source>
        <translation>Danach, mm</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>The change on the shop&apos;s parts</source>
        <translation>Die Änderung an den Teilen der Werkstatt</translation>
    </message>
    <message>
        <source>Before a change</source>
        <translation>Vor einer Änderung</translation>
    </message>
    <message>
        <source>Choose a machine and a lot above; of the two a size trial must be kept, on the page Size error.</source>
        <translation>Oben eine Maschine und eine Charge wählen; von beiden muss ein Maßversuch behalten sein, auf der Seite Maßabweichung.</translation>
    </message>
    <message>
        <source>Keep a size trial of this machine and lot first, on the page Size error.</source>
        <translation>Erst einen Maßversuch dieser Maschine und Charge behalten, auf der Seite Maßabweichung.</translation>
    </message>
    <message>
        <source>Nothing is kept here; lock a prediction on the page Prediction, which begins with what you tried here, then make the change.</source>
        <translation>Hier wird nichts behalten; auf der Seite Vorhersage, die mit dem hier Ausprobierten beginnt, eine Vorhersage festschreiben, dann ändern.</translation>
    </message>
    <message>
        <source>&amp;Size trial</source>
        <translation>Maß&amp;versuch</translation>
    </message>
    <message>
        <source>What if: &amp;offset</source>
        <translation>Wenn: Ver&amp;satz</translation>
    </message>
    <message>
        <source>mm a side</source>
        <translation>mm je Seite</translation>
    </message>
    <message>
        <source>&amp;X drawn</source>
        <translation>&amp;X gezeichnet</translation>
    </message>
    <message>
        <source>times</source>
        <translation>mal</translation>
    </message>
    <message>
        <source>&amp;Y drawn</source>
        <translation>&amp;Y gezeichnet</translation>
    </message>
    <message>
        <source>&amp;Parts of the shop, mm; a semicolon between</source>
        <translation>&amp;Teile der Werkstatt, mm; mit Semikolon trennen</translation>
    </message>
</context>
<context>
    <name>pages</name>
    <message>
        <source>Shop</source>
        <translation>Werkstatt</translation>
    </message>
    <message>
        <source>Machine geometry</source>
        <translation>Maschinengeometrie</translation>
    </message>
    <message>
        <source>Filament</source>
        <translation>Filament</translation>
    </message>
    <message>
        <source>Flow trials</source>
        <translation>Durchflussversuche</translation>
    </message>
    <message>
        <source>Part size</source>
        <translation>Teilemaß</translation>
    </message>
    <message>
        <source>Motion trials</source>
        <translation>Bewegungsversuche</translation>
    </message>
    <message>
        <source>Bench</source>
        <translation>Messplatz</translation>
    </message>
    <message>
        <source>Board</source>
        <translation>Tafel</translation>
    </message>
    <message>
        <source>Walk</source>
        <translation>Gang</translation>
    </message>
    <message>
        <source>Logbook</source>
        <translation>Logbuch</translation>
    </message>
    <message>
        <source>Storage</source>
        <translation>Ablage</translation>
    </message>
    <message>
        <source>Drive</source>
        <translation>Antrieb</translation>
    </message>
    <message>
        <source>Reversal</source>
        <translation>Umkehrspanne</translation>
    </message>
    <message>
        <source>Squareness</source>
        <translation>Rechtwinkligkeit</translation>
    </message>
    <message>
        <source>Bed plane</source>
        <translation>Bettebene</translation>
    </message>
    <message>
        <source>First layer</source>
        <translation>Erste Schicht</translation>
    </message>
    <message>
        <source>Lots</source>
        <translation>Chargen</translation>
    </message>
    <message>
        <source>Diameter</source>
        <translation>Durchmesser</translation>
    </message>
    <message>
        <source>Feed</source>
        <translation>Vorschub</translation>
    </message>
    <message>
        <source>Wall</source>
        <translation>Wand</translation>
    </message>
    <message>
        <source>Mass</source>
        <translation>Masse</translation>
    </message>
    <message>
        <source>Top pads</source>
        <translation>Deckfelder</translation>
    </message>
    <message>
        <source>Ceiling</source>
        <translation>Grenze</translation>
    </message>
    <message>
        <source>Size error</source>
        <translation>Maßabweichung</translation>
    </message>
    <message>
        <source>Whose error</source>
        <translation>Wessen Fehler</translation>
    </message>
    <message>
        <source>Shop split</source>
        <translation>Werkstattaufteilung</translation>
    </message>
    <message>
        <source>Promise</source>
        <translation>Zusage</translation>
    </message>
    <message>
        <source>Prediction</source>
        <translation>Vorhersage</translation>
    </message>
    <message>
        <source>Speed</source>
        <translation>Geschwindigkeit</translation>
    </message>
    <message>
        <source>Ringing</source>
        <translation>Nachschwingen</translation>
    </message>
    <message>
        <source>Ladder</source>
        <translation>Leiter</translation>
    </message>
    <message>
        <source>Pieces</source>
        <translation>Prüfstücke</translation>
    </message>
    <message>
        <source>Instruments</source>
        <translation>Messmittel</translation>
    </message>
    <message>
        <source>Toolpaths</source>
        <translation>Werkzeugwege</translation>
    </message>
    <message>
        <source>Charts</source>
        <translation>Regelkarten</translation>
    </message>
</context>
<context>
    <name>pdf</name>
    <message>
        <source>Day</source>
        <translation>Tag</translation>
    </message>
    <message>
        <source>page {number} of {count}</source>
        <translation>Seite {number} von {count}</translation>
    </message>
</context>
</TS>
