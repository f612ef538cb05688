namespace AimTrainer.Reports;

/// <summary>As what a report is written.</summary>
public enum ReportFormat
{
    /// <summary>One web page without outside assets.</summary>
    Html,

    /// <summary>One A4 page with real text.</summary>
    Pdf,

    /// <summary>The same page as a picture at 2 pixels a point.</summary>
    Png,

    /// <summary>One table of every figure and every crossing.</summary>
    Csv,

    /// <summary>One document with every figure.</summary>
    Json,
}
