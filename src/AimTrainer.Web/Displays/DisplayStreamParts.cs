using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>What every display's stream needs.</summary>
/// <param name="Store">Where the steps are.</param>
/// <param name="Stop">Whether projection is stopped.</param>
/// <param name="Tokens">Who may look.</param>
/// <param name="Looking">Who looks.</param>
/// <param name="Meters">What measures it.</param>
/// <param name="Clock">The time.</param>
internal sealed record DisplayStreamParts(ISessionStore Store, EmergencyStop Stop, DisplayTokens Tokens, LookingDisplays Looking, WebMeters Meters, TimeProvider Clock);
