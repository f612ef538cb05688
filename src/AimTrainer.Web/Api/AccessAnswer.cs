namespace AimTrainer.Web;

/// <summary>Who asks, and how this host is open.</summary>
/// <param name="Role">What they may do; null when nobody is known.</param>
/// <param name="Station">The station of a bowler or a feed.</param>
/// <param name="PassphraseSet">Whether a coach's passphrase is set; else everybody at this machine is the coach.</param>
/// <param name="OnNetwork">Whether it listens beyond this machine.</param>
/// <param name="FormToken">What a page sends as <c>x-aimtrainer-form</c> with whatever changes something; null where none is needed.</param>
public sealed record AccessAnswer(Role? Role, int? Station, bool PassphraseSet, bool OnNetwork, string? FormToken);
