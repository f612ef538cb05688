using AimTrainer.Analysis;

namespace AimTrainer.Reports;

/// <summary>A plain sentence and the interval behind it.</summary>
/// <param name="Topic">What it is about.</param>
/// <param name="Text">What is said.</param>
/// <param name="Figure">The figure and its limits; null with the reason when there are too few shots for a verdict.</param>
/// <param name="Unit">Of the figure: boards, share, or logSpreadPerSession.</param>
/// <param name="Confidence">How sure the limits are, 0 to 1.</param>
public sealed record ReportSentence(SentenceTopic Topic, string Text, BoundedEstimate Figure, string Unit, double Confidence);
