using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Setup;

/// <summary>Tells a coach of targets that a projector cannot show as they are graded, once for each width and distance.</summary>
/// <param name="othersDraw">Whether another projector of the lane draws a place.</param>
/// <param name="say">Told in words, with the numbers and what would help.</param>
internal sealed class TargetFlags(Func<Feet, bool> othersDraw, Action<string> say)
{
    private readonly HashSet<(BoardOffset Width, Feet Distance, ShowingResult Result)> _said = [];

    /// <summary>Looks at what is shown. In an ordinary window nothing is said: its map is for looking only.</summary>
    public void Look(WindowPlace place, ProjectorMap map, SessionSnapshot snapshot)
    {
        if (!place.Borderless || snapshot is not { Shown: { } aim, Setup: { } setup })
        {
            return;
        }

        foreach (var target in aim.Targets.AsEnumerable().Select(named => named.Target))
        {
            var showing = TargetShowing.Of(map, target, setup.Lane, setup.Hand, ShowingSettings.Usual);
            var isOthers = showing.Result == ShowingResult.OutsideStretch && othersDraw(target.Distance);
            if (showing.Result != ShowingResult.Honest && !isOthers && _said.Add((target.Width, target.Distance, showing.Result)))
            {
                say($"projector on {place.Monitor?.Name}: {showing.Found}. What would help: {string.Join("; ", showing.WouldHelp.AsEnumerable())}");
            }
        }
    }
}
