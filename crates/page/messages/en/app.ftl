# The app: what its screens say besides the pages they show.

app-home = The school
app-herbal = The herbal
app-herbal-words = A name, or part of one
app-herbal-look = Look it up
app-herbal-found = { $count ->
    [0] No plant is called so.
    [one] One plant.
   *[other] { $count } plants.
 }
app-compare = Side by side
app-compare-with = Hold it against what it is taken for:
app-nowhere = Nothing lies here
app-nowhere-says = This address leads to no screen:
app-not-understood = This could not be answered
app-name = trug
app-about = Which plant it is, what may be taken, what is made of it, and who may have it.
app-starting = The program and the herbal are being fetched. After this first time they are kept on this device.
app-no-script = This needs scripts, which are turned off in this browser. The command line does the same without one.
app-newer = A newer version of this program is here. It waits until you ask for it.
app-renew = Change to the newer version
app-not-kept = This address is neither https nor this device itself, so the browser keeps nothing of it: without a network it will not start. Open it on the device that serves it, or put the exported folder on any web space that has https.
app-not-started = The program did not start
app-not-started-says = Its files could not be fetched or read. Load this page again; with a network, if it was the first time.
app-not-kept-now = This was not kept
app-not-kept-now-says = The browser had no room for it, or would not write. What you filled in still stands below. Make room on this device, then do it again.
app-looks = Looks
app-looks-day = by day
app-looks-dusk = at dusk
app-looks-contrast = high contrast
fault-app-not-built = This program was built without the app.
    .want = A program that was built together with the app.
    .mend = Where the sources lie: cargo xtask app. It builds both and serves the app.
fault-folder-not-an-app = { $got } is no folder that the app can take the place of.
    .want = A folder that is not there yet, an empty one, or one that the app was written into before.
    .mend = Name another folder: what stands there would be lost.
app-harm = harm:
app-day = { $day }
app-outings = Outings
app-outings-found = { $count ->
    [0] None is kept on this device yet.
    [one] One is kept on this device.
   *[other] { $count } are kept on this device.
 }
app-outing-unnamed = An outing without a name
app-take-in = Take in an outing file
app-take-in-says = Choose it together with the files that it includes. What people said of their health is left out: it does not go afield.
app-take-in-do = Take it in
app-plan = The plan, what is open first
app-pages = Pages for paper
app-print = Print this page
app-hand-out = Give it to another device
app-hand-out-says = The outing file holds what stands now. The records hold every change, too.
app-outing-file = Save the outing file
app-records = Save the records
fault-app-no-file = No file was chosen.
    .want = An outing file, with those that it includes.
    .mend = Choose it, then take it in.
