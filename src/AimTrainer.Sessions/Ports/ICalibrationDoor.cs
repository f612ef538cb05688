namespace AimTrainer.Sessions;

/// <summary>
/// A calibration of a projector that is under way in this process, for whoever is not at its keyboard: a page on a phone, say. Actions and
/// state are JSON (<c>docs/calibration.md</c>), so that who uses it need know nothing of maps. Safe from many threads.
/// </summary>
public interface ICalibrationDoor
{
    /// <summary>The station whose lane it is.</summary>
    int Station { get; }

    /// <summary>The projector's name.</summary>
    string Projector { get; }

    /// <summary>Counts the changes of the state from 0: who polls need not read the state again while it is the same.</summary>
    long Version { get; }

    /// <summary>The state now, a JSON object that holds its version; the cautions in it are to be shown wherever the state is.</summary>
    string StateJson { get; }

    /// <summary>Does one action.</summary>
    /// <param name="actionJson">The action, a JSON object with its <c>kind</c>; at most <see cref="CalibrationAnswer.LongestAction"/> characters.</param>
    CalibrationAnswer Do(string actionJson);
}
