namespace AimTrainer.Web;

/// <summary>What the API's description says of a call; bodies are named by the schemas of <see cref="ApiSchemas"/>.</summary>
/// <param name="Takes">The schema of the body; null when it takes none.</param>
/// <param name="Gives">The schema of the answer.</param>
/// <param name="Status">The status of the answer.</param>
/// <param name="MediaType">What the answer is.</param>
/// <param name="Refusals">The statuses of its refusals, beside those that every call has.</param>
internal sealed record ApiText(string? Takes, string Gives, int Status, string MediaType, int[] Refusals);
