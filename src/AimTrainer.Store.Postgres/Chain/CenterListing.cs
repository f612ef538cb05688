namespace AimTrainer.Store.Postgres;

/// <summary>One line of the list of centers.</summary>
/// <param name="Name">What people call it.</param>
/// <param name="AddedAt">When it was added.</param>
/// <param name="HeardAt">When it was last heard of; null when it never was.</param>
/// <param name="RevokedAt">When its token was taken back; null while it is good.</param>
/// <param name="Sessions">How many sessions of it are here.</param>
/// <param name="Shots">Shots that count in them.</param>
/// <param name="ErasuresWaiting">Sessions that it has been asked to erase and has not yet.</param>
public sealed record CenterListing(
    string Name, DateTimeOffset AddedAt, DateTimeOffset? HeardAt, DateTimeOffset? RevokedAt, int Sessions, int Shots, int ErasuresWaiting);
