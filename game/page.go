package game

// A page is what lies open.
type page int

const (
	contents     page = iota // the sheets of the course
	sheetPage                // the exercises of one
	working                  // a match
	marked                   // a match, handed in
	showing                  // a demonstration
	questionPage             // a question
	answered                 // a question, answered
	result                   // the end of a run
	benchPage                // free play
	practicePage             // before a set, and after it
	progressPage
	helpPage
	teacherPage // the sheets that were written here, and what belongs to them
	writePage   // one of them
	draftPage   // an exercise of it
	givePage    // how it is handed out: link, code, file, paper
	slipPage    // what the learner hands in
	bookPage    // the mark book
	takePage    // a recording
	besidePage  // the bench, with a recording as the target
	takenPage   // the marks where one of two sounds is a recording
	makePage    // what becomes an exercise of a sound on the bench
	namePage    // who works on a sheet that was given
)

// pageNames are those in what is kept.
var pageNames = map[page]string{
	contents: "contents", sheetPage: "sheet", working: "work", marked: "marked", showing: "show", questionPage: "question",
	answered: "answer", result: "result", benchPage: "bench", practicePage: "practice", progressPage: "progress", helpPage: "help",
	teacherPage: "teacher", writePage: "write", draftPage: "draft", givePage: "give", slipPage: "slip", bookPage: "book", takePage: "take", besidePage: "beside", takenPage: "taken", makePage: "make", namePage: "name",
}

// An overlay is what lies over the page.
type overlay int

const (
	noOverlay overlay = iota
	volumeHint
	eraseQuestion
	importQuestion
	removeQuestion
	bookQuestion
	note // what the learner must be told: say
)

// paired says whether the page shows two sounds, or one alone.
func (p page) paired() bool {
	return p == working || p == marked || p == answered || p == helpPage || p == besidePage || p == takenPage
}

// pictured says whether the page shows sounds.
func (p page) pictured() bool { return p.paired() || p == showing || p == benchPage }
