package wav

import (
	"bytes"
	"errors"
	"fmt"
	"io"
)

// What is wrong with a file, in sentences for whoever has opened it. Errors of
// [Read] wrap one of them and add a detail in brackets, but for those of the
// reader itself.
var (
	ErrNotWAV     = errors.New("This is not a WAV file. Save the recording as WAV and open that.")
	ErrCompressed = errors.New("This WAV file holds compressed sound. Save the recording as WAV without compression (PCM) and open that.")
	ErrDamaged    = errors.New("This WAV file is damaged: its parts contradict one another. Save the recording as WAV once more and open that.")
	ErrCutOff     = errors.New("This WAV file is cut off: a part of it is missing. Copy it once more, or save the recording again.")
	ErrChannels   = errors.New("This WAV file has no channels, or more than eight. Save the recording in mono or stereo and open that.")
	ErrDepth      = errors.New("This WAV file has samples of an unusual size. Save the recording with 16 or 24 bits and open that.")
)

// cut turns the end of the file into a sentence and keeps other errors.
func cut(err error) error {
	if err == io.EOF || err == io.ErrUnexpectedEOF {
		return ErrCutOff
	}
	return fmt.Errorf("The WAV file cannot be read: %w", err)
}

// others are the first bytes of files that are taken for WAV files.
var others = []struct{ start, name string }{
	{"ID3", "MP3"}, {"\xff\xfb", "MP3"}, {"fLaC", "FLAC"}, {"OggS", "Ogg"}, {"FORM", "AIFF"},
	{"\x1a\x45\xdf\xa3", "WebM"}, {"caff", "CAF"}, {"RIFX", "RIFX"}, {"RF64", "RF64, for more than 4 GiB"}, {"BW64", "BW64, for more than 4 GiB"},
}

// greet looks at the first bytes of a file.
func greet(b []byte) error {
	if len(b) == 12 && string(b[:4]) == "RIFF" && string(b[8:]) == "WAVE" {
		return nil
	}
	for _, o := range others {
		if bytes.HasPrefix(b, []byte(o.start)) {
			return fmt.Errorf("%w (%s)", ErrNotWAV, o.name)
		}
	}
	if len(b) == 12 && string(b[4:8]) == "ftyp" {
		return fmt.Errorf("%w (MP4)", ErrNotWAV)
	}
	return ErrNotWAV
}
