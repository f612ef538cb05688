namespace AimTrainer.Display;

/// <summary>The colour of a note.</summary>
public enum CueTone
{
    /// <summary>Struck and dying away: for what went well.</summary>
    Bell,

    /// <summary>Hollow and held, odd harmonics only: for what was missed or does not count.</summary>
    Reed,

    /// <summary>Nearly a pure tone: for changes of the target.</summary>
    Soft,
}
