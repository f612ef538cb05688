using System.Text.Json;

namespace AimTrainer.Web;

/// <summary>A calibration as a page sees it.</summary>
/// <param name="Station">The station whose lane it is.</param>
/// <param name="Projector">The projector's name.</param>
/// <param name="Since">Since when it is open to pages.</param>
/// <param name="State">Its state (<c>docs/calibration.md</c>).</param>
internal sealed record AttachedView(int Station, string Projector, DateTimeOffset Since, JsonElement State);
