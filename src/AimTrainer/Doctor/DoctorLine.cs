namespace AimTrainer.Doctor;

/// <summary>One thing that was looked at.</summary>
/// <param name="Name">What.</param>
/// <param name="State">How it is.</param>
/// <param name="Found">What was found.</param>
/// <param name="ToDo">What to do; null when there is nothing.</param>
internal sealed record DoctorLine(string Name, DoctorState State, string Found, string? ToDo = null)
{
    public static DoctorLine Ok(string name, string found) => new(name, DoctorState.Ok, found);

    public static DoctorLine Warn(string name, string found, string toDo) => new(name, DoctorState.Warn, found, toDo);

    public static DoctorLine Fail(string name, string found, string toDo) => new(name, DoctorState.Fail, found, toDo);
}
