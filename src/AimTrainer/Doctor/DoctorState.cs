namespace AimTrainer.Doctor;

/// <summary>How a thing that was looked at is.</summary>
internal enum DoctorState
{
    /// <summary>Well.</summary>
    Ok,

    /// <summary>Works, or is not needed everywhere; worth a look.</summary>
    Warn,

    /// <summary>Does not work.</summary>
    Fail,
}
