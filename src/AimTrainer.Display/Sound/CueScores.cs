using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>
/// All cues as notes. A hit is a bell in the middle, rising, higher and with more notes the better it was; a miss is a reed on its
/// own side, an octave lower on the left than on the right, so that one loudspeaker, or one ear, is enough; one note when it was
/// close, two when not. Nothing lies below 300 Hz, where balls roll and ventilation hums.
/// </summary>
public static class CueScores
{
    private const int E4 = -5, F4 = -4, A4 = 0, B4 = 2, CSharp5 = 4, D5 = 5, E5 = 7, A5 = 12, C6 = 15, CSharp6 = 16, D6 = 17, E6 = 19, A6 = 24;

    /// <summary>Every cue, in the order of <see cref="Cue"/>.</summary>
    public static ValueList<CueScore> All { get; } =
    [
        Score(Cue.HitBest, "held, in the best band", 25, CueTone.Bell, CuePlace.Centre, 90, A5, CSharp6, E6, A6),
        Score(Cue.Hit, "held", 25, CueTone.Bell, CuePlace.Centre, 130, A5, E6),
        Score(Cue.HitJust, "held, in the widest band that holds", 0, CueTone.Bell, CuePlace.Centre, 180, A5),
        Score(Cue.CloseLeft, "not held but close, on the left", 0, CueTone.Reed, CuePlace.Left, 220, E4),
        Score(Cue.CloseRight, "not held but close, on the right", 0, CueTone.Reed, CuePlace.Right, 220, E5),
        Score(Cue.MissLeft, "missed on the left", 50, CueTone.Reed, CuePlace.Left, 170, E4, E4),
        Score(Cue.MissRight, "missed on the right", 50, CueTone.Reed, CuePlace.Right, 170, E5, E5),
        Score(Cue.Missed, "not held, the side not told", 30, CueTone.Reed, CuePlace.Centre, 170, A4, F4),
        Score(Cue.Unmeasured, "not measured: nobody knows where it crossed", 60, CueTone.Soft, CuePlace.Centre, 110, B4, B4, B4),
        Score(Cue.SetAside, "set aside: this shot does not count", 20, CueTone.Reed, CuePlace.Centre, 90, F4, B4, F4),
        Score(Cue.ToldHit, "in a row of shots: held", 0, CueTone.Bell, CuePlace.Centre, 130, E6),
        Score(Cue.ToldLeft, "in a row of shots: missed on the left", 0, CueTone.Reed, CuePlace.Left, 130, E4),
        Score(Cue.ToldRight, "in a row of shots: missed on the right", 0, CueTone.Reed, CuePlace.Right, 130, E5),
        Score(Cue.ToldMissed, "in a row of shots: not held", 0, CueTone.Reed, CuePlace.Centre, 130, A4),
        Score(Cue.ToldUnmeasured, "in a row of shots: not measured", 0, CueTone.Soft, CuePlace.Centre, 130, B4),
        Score(Cue.Narrower, "the target is narrower from now on", 10, CueTone.Soft, CuePlace.Centre, 80, C6, D6, E6),
        Score(Cue.Wider, "the target is wider from now on", 10, CueTone.Soft, CuePlace.Centre, 80, E6, D6, C6),
        Score(Cue.BlockEnd, "the block is over", 40, CueTone.Bell, CuePlace.Centre, 200, A4, D5, E5),
        Score(Cue.SessionEnd, "the session is over", 40, CueTone.Bell, CuePlace.Centre, 260, E5, CSharp5, A4, A4),
    ];

    /// <summary>The notes of a cue.</summary>
    public static CueScore Of(Cue cue) => All[(int)cue];

    private static CueScore Score(Cue cue, string meaning, int restMs, CueTone tone, CuePlace place, int lengthMs, params ReadOnlySpan<int> steps)
    {
        var notes = new CueNote[steps.Length];
        for (var i = 0; i < notes.Length; i++)
        {
            notes[i] = new CueNote(Pitch.FromA4(steps[i]), TimeSpan.FromMilliseconds(lengthMs), tone, place);
        }

        return new CueScore(cue, meaning, ValueList.Create<CueNote>(notes), TimeSpan.FromMilliseconds(restMs));
    }
}
