namespace AimTrainer.Domain;

/// <summary>What the order of a lane needs to know of a session.</summary>
/// <param name="Shots">How many shots were graded in it, void ones too: the number of its last shot.</param>
/// <param name="Ended">Whether it is over.</param>
public readonly record struct SessionCount(int Shots, bool Ended);
