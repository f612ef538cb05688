using AimTrainer.Domain;

namespace AimTrainer.Store;

/// <summary>People of a center who follow a program together. Without the group's name: a chain has no need of it.</summary>
/// <param name="Id">The group.</param>
/// <param name="ProgramId">Which program.</param>
/// <param name="Starts">The first day of the program's first week.</param>
/// <param name="Members">Who is in it.</param>
public sealed record DeliveredGroup(string Id, string ProgramId, DateOnly Starts, ValueList<DeliveredMember> Members);
